import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll } from 'vitest'
import { phoneFiles } from '../../../../src/http/inspection/server/phone-files.ts'

export type Floors = typeof import('../../../../src/http/inspection/phone/reckoning.ts')

/** The floors as the phone gets them: the very bytes that are served, run here. */
export async function bundledFloors(): Promise<Floors> {
  const { files, trouble } = await phoneFiles()
  if (trouble) throw trouble
  const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-floors-'))
  afterAll(() => rm(folder, { recursive: true }))
  await writeFile(path.join(folder, 'package.json'), '{"type":"module"}')
  const scripts = [...files].filter(([address]) => address.endsWith('.js'))
  for (const [address, { plain }] of scripts)
    await writeFile(path.join(folder, path.basename(address)), plain)
  const [floors] = scripts.find(([address]) => path.basename(address).startsWith('floors.'))!
  return import(pathToFileURL(path.join(folder, path.basename(floors))).href) as Promise<Floors>
}
