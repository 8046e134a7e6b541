import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'

export const ROOT = path.resolve(import.meta.dirname, '../..')

/** Every TypeScript file under a folder of the project, by its path from the root. */
export const filesUnder = (folder: string): readonly string[] =>
  readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => path.join(folder, name))
    .sort()

export const textOf = (file: string): string => readFileSync(path.join(ROOT, file), 'utf8')

/** The program without its comments and the insides of its strings, where words mean nothing. */
export const withoutComments = (text: string): string =>
  text
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/(^|[^:'"`\\])\/\/.*$/gm, '$1')
    .replaceAll(/'(?:[^'\\\n]|\\.)*'/g, "''")

export type Import = { readonly what: string; readonly typeOnly: boolean }

/** What a file imports or passes on: packages by name, files by their path from the root. */
export function importsOf(file: string): readonly Import[] {
  const pattern =
    /^(?:import|export)\s+(type\s)?[^;'"]*?from\s+'([^']+)'|^import\s+'([^']+)'|\bimport\('([^']+)'\)/gm
  return [...textOf(file).matchAll(pattern)].map(([, type, from, bare, dynamic]) => {
    const name = from ?? bare ?? dynamic ?? ''
    const what = name.startsWith('.') ? path.join(path.dirname(file), name) : name
    return { what, typeOnly: type !== undefined }
  })
}
