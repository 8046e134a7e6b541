import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { readSignInProviders } from '../../src/files/sign-in-providers.ts'

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-providers-'))
afterAll(() => rm(folder, { recursive: true }))
const file = path.join(folder, 'providers.json')
const reading = async (content: unknown) => {
  await writeFile(file, typeof content === 'string' ? content : JSON.stringify(content))
  return readSignInProviders(file)
}
const one = { title: 'Quillback County', issuer: 'https://sign-in.quillback.example', clientId: 'asfound' }

test('none without a file', async () => expect(await readSignInProviders(undefined)).toEqual([]))

test('each county’s own, its secret from the file beside it', async () => {
  await writeFile(path.join(folder, 'secret'), 'hush-hush\n')
  expect(await reading({ quillback: { ...one, clientSecretFile: 'secret' } })).toEqual([
    { county: 'quillback', ...one, clientSecret: 'hush-hush', secondStep: 'here' },
  ])
})

test.each([
  ['not JSON', 'is not JSON'],
  [
    { quillback: { ...one, issuer: 'http://sign-in.quillback.example' } },
    'quillback.issuer must begin with https://',
  ],
  [{ quillback: { ...one, clientSecret: 'hush-hush' } }, 'clientSecret'],
  [{ 'Not A County': one }, 'Not A County'],
  [{ quillback: { ...one, clientSecretFile: 'nowhere' } }, 'cannot be read'],
])('%j is refused in words', async (content, says) => {
  const refused = reading(content)
  await expect(refused).rejects.toThrow(says)
  await expect(refused).rejects.not.toThrow('hush-hush')
})
