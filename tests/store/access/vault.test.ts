import { randomBytes } from 'node:crypto'
import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { OWN_KEY_FILE, openVault, vaultOf } from '../../../src/store/access/vault.ts'

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-vault-'))
afterAll(() => rm(folder, { recursive: true }))
const none = { key: undefined, file: undefined }

describe('what is sealed', () => {
  const key = randomBytes(32)
  const vault = vaultOf(key)

  test('opens again by the same key and for the same purpose, and differs each time', () => {
    const [one, two] = [vault.seal('secret', 'a'), vault.seal('secret', 'a')]
    expect([vault.open(one, 'a'), vaultOf(key).open(two, 'a')]).toEqual(['secret', 'secret'])
    expect(one.equals(two)).toBe(false)
    expect(one.includes('secret')).toBe(false)
  })

  test('does not open for another purpose, by another key, altered in any byte, or cut', () => {
    const sealed = vault.seal('secret', 'a')
    expect(vault.open(sealed, 'b')).toBeUndefined()
    expect(vaultOf(randomBytes(32)).open(sealed, 'a')).toBeUndefined()
    for (let at = 0; at < sealed.length; at++) {
      const altered = Buffer.from(sealed)
      altered[at]! ^= 1
      expect(vault.open(altered, 'a'), `byte ${at}`).toBeUndefined()
    }
    for (const length of [0, 12, 27, sealed.length - 1]) {
      expect(vault.open(sealed.subarray(0, length), 'a')).toBeUndefined()
    }
  })
})

describe('the key', () => {
  test('is made where there is none, once for all who start together, readable by its owner alone', async () => {
    const dataFolder = path.join(folder, 'own')
    const vaults = await Promise.all(Array.from({ length: 5 }, () => openVault({ ...none, dataFolder })))
    const sealed = vaults[0]!.seal('secret', 'a')
    expect(vaults.map((vault) => vault.open(sealed, 'a'))).toEqual(Array(5).fill('secret'))
    expect((await stat(path.join(dataFolder, OWN_KEY_FILE))).mode & 0o777).toBe(0o600)
  })

  test('comes from the environment or a file, and a fault never repeats it', async () => {
    const key = randomBytes(32).toString('base64')
    const file = path.join(folder, 'given')
    await writeFile(file, `${key}\n`)
    const sealed = (await openVault({ ...none, key, dataFolder: folder })).seal('secret', 'a')
    expect((await openVault({ ...none, file, dataFolder: folder })).open(sealed, 'a')).toBe('secret')
    await writeFile(file, 'dG9vIHNob3J0')
    await expect(openVault({ ...none, file, dataFolder: folder })).rejects.toThrow(/holds no key of 32 bytes/)
    await expect(openVault({ ...none, file, dataFolder: folder })).rejects.not.toThrow(/dG9v/)
    await expect(openVault({ ...none, file: `${file}-none`, dataFolder: folder })).rejects.toThrow(
      /cannot be read/,
    )
    expect(await readFile(file, 'utf8')).toBe('dG9vIHNob3J0')
  })
})
