import { existsSync, statSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { signingKey } from '../../../src/letters/signing/key-source.ts'
import { replaceOwnKey } from '../../../src/letters/signing/replace-own-key.ts'

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-new-key-'))
afterAll(() => rm(folder, { recursive: true }))

test('a new key takes the place of the old one, which is set aside readable by its user alone', async () => {
  const source = { pem: undefined, file: undefined, dataFolder: folder }
  const first = await replaceOwnKey(folder, 'none')
  expect(first.oldFile).toBeNull()
  const old = await signingKey(source)
  expect(old.equals(first.key)).toBe(true)
  const { key, oldFile } = await replaceOwnKey(folder, '2026-11-25')
  expect((await signingKey(source)).equals(key)).toBe(true)
  expect(key.equals(old)).toBe(false)
  expect(existsSync(oldFile!)).toBe(true)
  expect(statSync(oldFile!).mode & 0o777).toBe(0o600)
})
