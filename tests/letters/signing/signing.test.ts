import { createPrivateKey, createPublicKey, sign, verify } from 'node:crypto'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import fc from 'fast-check'
import { CompactSign, compactVerify, createLocalJWKSet, type JSONWebKeySet } from 'jose'
import { afterAll, describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { newKeyPem, OWN_KEY_FILE, signingKey } from '../../../src/letters/signing/key-source.ts'
import { ALGORITHM, openSigner, TYPE } from '../../../src/letters/signing/signer.ts'
import { isPdfOf, verifyLetter } from '../../../src/letters/signing/verify.ts'
import { type LetterStatement, statementText } from '../../../src/letters/statement.ts'
import oracle from '../../oracles/rfc-8037/ed25519.json' with { type: 'json' }

const statement: LetterStatement = {
  form: 'asfound-letter-1',
  kind: 'status',
  language: 'en',
  number: '2026-00017',
  county: { id: 'quillback', name: 'Quillback County' },
  parcel: { number: '07-0412-0031', address: '14 Heron Hollow Rd' },
  issuedOn: '2026-06-01',
  asOf: '2026-06-01',
  status: 'under-review',
  check: 'https://records.quillback.example/letters/H7KQ-3MXR-9CWT-4FJD',
  pdfSha256: 'ab'.repeat(32),
  reconciliation: { id: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11', sha256: 'cd'.repeat(32) },
}
const signer = await openSigner(createPrivateKey(newKeyPem()))
const keysOf = (...signers: (typeof signer)[]): JSONWebKeySet => ({
  keys: signers.map(({ publicKey }) => ({ ...publicKey })),
})
const signature = await signer.sign(statement)

describe('against RFC 8037', () => {
  const key = createPrivateKey({ key: oracle.privateKey, format: 'jwk' })

  test('a key is known by its thumbprint (A.3)', async () => {
    const { publicKey } = await openSigner(key)
    expect(publicKey.kid).toBe(oracle.thumbprint)
    expect(publicKey.x).toBe(oracle.privateKey.x)
  })

  test('the key signs what the example signs (A.4), so the two libraries mean the same by Ed25519', () => {
    expect(sign(null, Buffer.from(oracle.signedText), key).toString('base64url')).toBe(oracle.signature)
  })
})

describe('a signature', () => {
  test('is a JWS that another library’s checker accepts by the published keys alone', async () => {
    const { payload, protectedHeader } = await compactVerify(signature, createLocalJWKSet(keysOf(signer)))
    expect(protectedHeader).toEqual({ alg: ALGORITHM, kid: signer.publicKey.kid, typ: TYPE })
    expect(JSON.parse(new TextDecoder().decode(payload))).toEqual(statement)
  })

  test('fits by Node’s own Ed25519, with nothing of JOSE but the dots', async () => {
    const [header, payload, seal] = signature.split('.') as [string, string, string]
    const publicKey = createPublicKey({ key: { ...signer.publicKey }, format: 'jwk' })
    const fits = verify(null, Buffer.from(`${header}.${payload}`), publicKey, Buffer.from(seal, 'base64url'))
    expect(fits).toBe(true)
    expect(Buffer.from(payload, 'base64url').toString()).toBe(statementText(statement))
  })

  test('gives back the statement', async () => {
    expect(must(await verifyLetter(signature, keysOf(signer)))).toEqual(statement)
  })

  test('fails on any changed character, wherever it is', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(signature.length - 1), fc.constantFrom(...'ABZaz09-_'), async (at, other) => {
        fc.pre(signature[at] !== other)
        const changed = signature.slice(0, at) + other + signature.slice(at + 1)
        const [from, to] = [signature, changed].map((it) =>
          it.split('.').map((part) => Buffer.from(part, 'base64url')),
        )
        // The last character of a part may hold bits that mean nothing; then nothing was changed.
        fc.pre(from!.length !== to!.length || from!.some((bytes, part) => !bytes.equals(to![part]!)))
        expect((await verifyLetter(changed, keysOf(signer))).ok).toBe(false)
      }),
      { numRuns: 300 },
    )
  })

  test('fails on any changed part of the statement', async () => {
    const [header, , seal] = signature.split('.')
    for (const changed of [
      { ...statement, status: 'matches' as const },
      { ...statement, number: '2026-00018' },
      { ...statement, pdfSha256: `ac${'ab'.repeat(31)}` },
      { ...statement, reconciliation: null },
    ]) {
      const payload = Buffer.from(statementText(changed)).toString('base64url')
      expect((await verifyLetter(`${header}.${payload}.${seal}`, keysOf(signer))).ok).toBe(false)
    }
  })

  test('by another key, by none, or on something else is told apart', async () => {
    const other = await openSigner(createPrivateKey(newKeyPem()))
    expect(await verifyLetter(signature, keysOf(other))).toEqual({
      ok: false,
      error: 'none of the published keys made this signature',
    })
    expect((await verifyLetter('nonsense', keysOf(signer))).ok).toBe(false)
    expect((await verifyLetter('', keysOf(signer))).ok).toBe(false)

    const key = createPrivateKey(newKeyPem())
    const { publicKey } = await openSigner(key)
    const seal = (text: string, typ: string) =>
      new CompactSign(new TextEncoder().encode(text))
        .setProtectedHeader({ alg: ALGORITHM, kid: publicKey.kid, typ })
        .sign(key)
    const keys = { keys: [{ ...publicKey }] }
    expect((await verifyLetter(await seal(statementText(statement), TYPE), keys)).ok).toBe(true)
    expect((await verifyLetter(await seal(statementText(statement), 'JWT'), keys)).ok).toBe(false)
    expect((await verifyLetter(await seal('{"form":"asfound-letter-1"}', TYPE), keys)).ok).toBe(false)
    const more = JSON.stringify({ ...statement, also: 'this' })
    expect((await verifyLetter(await seal(more, TYPE), keys)).ok).toBe(false)
    expect((await verifyLetter(await seal(JSON.stringify(statement, null, 1), TYPE), keys)).ok).toBe(false)
  })

  test('that claims no algorithm, or a shared secret, is refused', async () => {
    const part = (value: object) => Buffer.from(JSON.stringify(value)).toString('base64url')
    const payload = Buffer.from(statementText(statement)).toString('base64url')
    const { kid } = signer.publicKey
    for (const alg of ['none', 'HS256', 'EdDSA', 'ES256']) {
      const forged = `${part({ alg, kid, typ: TYPE })}.${payload}.${signature.split('.')[2]}`
      expect((await verifyLetter(forged, keysOf(signer))).ok).toBe(false)
    }
  })

  test('of an old key holds when a new one has come', async () => {
    const next = await openSigner(createPrivateKey(newKeyPem()))
    const both = keysOf(next, signer)
    expect(must(await verifyLetter(signature, both))).toEqual(statement)
    expect(must(await verifyLetter(await next.sign(statement), both))).toEqual(statement)
  })

  test('vouches for the PDF by its bytes', () => {
    // SHA-256 of nothing at all, as in NIST's example values for FIPS 180-4 (from memory).
    const ofNothing = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'
    expect(isPdfOf({ ...statement, pdfSha256: ofNothing }, Buffer.alloc(0))).toBe(true)
    expect(isPdfOf({ ...statement, pdfSha256: ofNothing }, Buffer.alloc(1))).toBe(false)
  })
})

describe('the key', async () => {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-keys-'))
  afterAll(() => rm(folder, { recursive: true }))
  const from = (over: object) => signingKey({ pem: undefined, file: undefined, dataFolder: folder, ...over })
  const idOf = async (key: Awaited<ReturnType<typeof from>>) => (await openSigner(key)).publicKey.kid

  test('of the service’s own is made once, though several start at once, readable by its user alone', async () => {
    const kids = await Promise.all(Array.from({ length: 8 }, async () => idOf(await from({}))))
    expect(new Set(kids).size).toBe(1)
    expect(statSync(path.join(folder, OWN_KEY_FILE)).mode & 0o777).toBe(0o600)
    expect(readdirSync(folder)).toEqual([OWN_KEY_FILE])
    expect(await idOf(await from({}))).toBe(kids[0])
  })

  test('comes from the environment or a file where one is given, and then none is made', async () => {
    const pem = newKeyPem()
    const file = path.join(folder, 'given.pem')
    await writeFile(file, pem)
    const empty = path.join(folder, 'empty')
    const kid = await idOf(createPrivateKey(pem))
    expect(await idOf(await from({ pem, dataFolder: empty }))).toBe(kid)
    expect(await idOf(await from({ pem: pem.replaceAll('\n', '\\n'), dataFolder: empty }))).toBe(kid)
    expect(await idOf(await from({ file, dataFolder: empty }))).toBe(kid)
    expect(existsSync(empty)).toBe(false)
  })

  test('that can’t be used is told, without a part of it', async () => {
    await expect(from({ pem: 'c2VjcmV0' })).rejects.toThrow('ASFOUND_SIGNING_KEY holds no private key in PEM')
    await expect(from({ file: path.join(folder, 'nowhere') })).rejects.toThrow('can’t be read from')
    const fault = await from({ pem: 'c2VjcmV0' }).catch((caught: Error) => caught)
    expect(String(fault)).not.toContain('c2VjcmV0')
  })
})
