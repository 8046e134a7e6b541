import path from 'node:path'
import type { SourceFile } from 'typescript/unstable/ast'
import { API, type Checker } from 'typescript/unstable/sync'
import { afterAll } from 'vitest'
import { ROOT } from './source-files.ts'

export type Read = { readonly file: string; readonly source: SourceFile; readonly types: Checker }

/** Every file of the program as the compiler reads it, with its types; files by their path from the root. */
export function readProgram(): readonly Read[] {
  const api = new API({ cwd: ROOT })
  afterAll(() => api.close())
  const openProjects = ['tsconfig.json', 'src/http/inspection/phone/tsconfig.json'].map((name) =>
    path.join(ROOT, name),
  )
  const read = new Map<string, Read>()
  for (const { program, checker } of api.updateSnapshot({ openProjects }).getProjects()) {
    for (const name of program.getSourceFileNames()) {
      const file = path.relative(ROOT, name)
      const source = /^(src|tests)\//.test(file) && !read.has(file) && program.getSourceFile(name)
      if (source) read.set(file, { file, source, types: checker })
    }
  }
  return [...read.values()]
}
