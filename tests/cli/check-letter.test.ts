import { execFile } from 'node:child_process'
import { createHash, createPrivateKey } from 'node:crypto'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import { afterAll, expect, test } from 'vitest'
import { newKeyPem } from '../../src/letters/signing/key-source.ts'
import { openSigner } from '../../src/letters/signing/signer.ts'

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-check-letter-'))
afterAll(() => rm(folder, { recursive: true }))
const signer = await openSigner(createPrivateKey(newKeyPem()))
const pdf = Buffer.from('%PDF-1.7 a letter')
const signature = await signer.sign({
  form: 'asfound-letter-1',
  kind: 'status',
  language: 'en',
  number: '2026-00017',
  county: { id: 'quillback', name: 'Quillback County' },
  parcel: { number: '07-0412-0031', address: null },
  issuedOn: '2026-06-01',
  asOf: '2026-06-01',
  status: 'resolved',
  check: 'https://records.quillback.example/letters/H7KQ-3MXR-9CWT-4FJD',
  pdfSha256: createHash('sha256').update(pdf).digest('hex'),
  reconciliation: null,
})

const file = async (name: string, content: string | Buffer): Promise<string> => {
  const place = path.join(folder, name)
  await writeFile(place, content)
  return place
}
const keys = await file('jwks.json', JSON.stringify({ keys: [signer.publicKey] }))
const letter = await file('letter.json', JSON.stringify({ state: 'valid', signature }))

async function check(...args: string[]): Promise<{ code: number; says: string }> {
  const script = path.resolve(import.meta.dirname, '../../src/cli/check-letter.ts')
  const run = promisify(execFile)(process.execPath, [script, ...args], { cwd: folder })
  const { stdout, stderr, code } = await run.then(
    (ended) => ({ ...ended, code: 0 }),
    (fault: { stdout: string; stderr: string; code: number }) => fault,
  )
  return { code, says: stdout + stderr }
}

test('a letter is genuine by the published keys alone, and its PDF is the one that was sealed', async () => {
  const whole = await check(letter, '--keys', keys, '--pdf', await file('letter.pdf', pdf))
  expect(whole).toEqual({
    code: 0,
    says: expect.stringContaining('GENUINE by these keys: status letter 2026-00017 of Quillback County'),
  })
  expect(whole.says).toContain('The PDF is the one that was signed.')
  const bare = await check(await file('letter.jws', signature), '--keys', keys)
  expect(bare.code).toBe(0)
})

test('another PDF, another key or a changed signature is not', async () => {
  const other = await openSigner(createPrivateKey(newKeyPem()))
  const otherKeys = await file('other.json', JSON.stringify({ keys: [other.publicKey] }))
  const changed = await file(
    'changed.jws',
    signature.replace(/.$/, (sign) => (sign === 'A' ? 'Q' : 'A')),
  )
  const results = [
    await check(
      letter,
      '--keys',
      keys,
      '--pdf',
      await file('other.pdf', Buffer.concat([pdf, Buffer.from(' ')])),
    ),
    await check(letter, '--keys', otherKeys),
    await check(changed, '--keys', keys),
  ]
  expect(results.map(({ code }) => code)).toEqual([1, 1, 1])
  for (const { says } of results) expect(says).toContain('NOT ')
})

const statement = JSON.parse(Buffer.from(signature.split('.')[1]!, 'base64url').toString())

test('a file that says anything otherwise than what is signed is no letter, whatever its signature', async () => {
  const kept = { state: 'valid', signature, statement }
  expect((await check(await file('kept.json', JSON.stringify(kept)), '--keys', keys)).code).toBe(0)
  const altered = [
    { ...kept, statement: { ...statement, status: 'matches' } },
    { ...kept, statement: { ...statement, word: 'matches' } },
    { ...kept, statement: { ...statement, parcel: { number: '07-0412-0032', address: null } } },
    { ...kept, word: 'matches' },
    { ...kept, number: '2026-00018' },
    { ...kept, pdfSha256: '0'.repeat(64) },
  ]
  for (const [index, one] of altered.entries()) {
    const { code, says } = await check(
      await file(`altered-${index}.json`, JSON.stringify(one)),
      '--keys',
      keys,
    )
    expect([index, code]).toEqual([index, 1])
    expect(says).toContain('NOT GENUINE')
  }
})

/** The recipe of docs/letters.md as it stands there, run on what is given. */
async function byHand(
  answer: object,
  bytes: Buffer,
): Promise<{ readonly code: number; readonly says: string }> {
  const docs = await readFile(path.resolve(import.meta.dirname, '../../docs/letters.md'), 'utf8')
  const recipe = /```sh\n(JWS=[\s\S]*?)```/.exec(docs)![1]!
  await file('letter.json', JSON.stringify(answer))
  await file('letter.pdf', bytes)
  const ran = await promisify(execFile)('bash', ['-c', recipe], { cwd: folder }).then(
    (ended) => ({ ...ended, code: 0 }),
    (fault: { stdout: string; stderr: string; code: number }) => fault,
  )
  return { code: ran.code, says: ran.stdout }
}

test('the recipe for general tools takes the hash from what is signed, and tells what that is', async () => {
  const genuine = await byHand({ state: 'valid', signature }, pdf)
  expect(genuine).toEqual({ code: 0, says: expect.stringContaining('the same PDF') })
  expect(genuine.says).toContain('"status": "resolved"')
  const forged = Buffer.from('%PDF-1.7 another letter')
  const pdfSha256 = createHash('sha256').update(forged).digest('hex')
  const fooled = await byHand({ state: 'valid', signature, statement: { ...statement, pdfSha256 } }, forged)
  expect(fooled.code).not.toBe(0)
  expect(fooled.says).not.toContain('the same PDF')
  const broken = signature.replace(/^([^.]*\.)(.)/, (_, head, sign) => head + (sign === 'e' ? 'f' : 'e'))
  const spoilt = await byHand({ state: 'valid', signature: broken }, pdf)
  expect(spoilt.code).not.toBe(0)
  expect(spoilt.says).not.toContain('the same PDF')
})

test('what could not be asked is told apart from what is not genuine', async () => {
  const results = [
    await check(),
    await check(letter),
    await check(path.join(folder, 'nothing.json'), '--keys', keys),
    await check(letter, '--keys', letter),
    await check(await file('empty.json', '{}'), '--keys', keys),
  ]
  expect(results.map(({ code }) => code)).toEqual([2, 2, 2, 2, 2])
})
