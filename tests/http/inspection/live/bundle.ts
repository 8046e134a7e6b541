import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll } from 'vitest'
import { phoneFiles } from '../../../../src/http/inspection/server/phone-files.ts'

export type Reckoning = typeof import('../../../../src/http/inspection/phone/reckoning.ts')

/** The reckoning as the phone gets them: the very bytes that are served, run here. */
export async function bundledReckoning(): Promise<Reckoning> {
  const { files, trouble } = await phoneFiles()
  if (trouble) throw trouble
  const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-reckoning-'))
  afterAll(() => rm(folder, { recursive: true }))
  await writeFile(path.join(folder, 'package.json'), '{"type":"module"}')
  const scripts = [...files].filter(([address]) => address.endsWith('.js'))
  for (const [address, { plain }] of scripts)
    await writeFile(path.join(folder, path.basename(address)), plain)
  const [reckoning] = scripts.find(([address]) => path.basename(address).startsWith('reckoning.'))!
  return import(pathToFileURL(path.join(folder, path.basename(reckoning))).href) as Promise<Reckoning>
}
