import { describe, expect, test } from 'vitest'
import { codeAt, newSecret, secretAddress, stepOfCode } from '../../../src/operations/access/one-time-code.ts'
import { newRecoveryCodes, recoveryHash } from '../../../src/operations/access/recovery-codes.ts'
import oracle from '../../oracles/rfc-6238/appendix-b.json' with { type: 'json' }

const BASE32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'
/** RFC 4648, section 6, by hand: the test's own, so that a fault in the library's would show. */
const base32 = (text: string): string =>
  [...Buffer.from(text)]
    .map((byte) => byte.toString(2).padStart(8, '0'))
    .join('')
    .replaceAll(/.{5}/g, (bits) => BASE32[Number.parseInt(bits, 2)]!)

const secret = base32(oracle.secretAscii)

describe('a one-time code', () => {
  test.each(oracle.cases)('at second $seconds is what RFC 6238 has', ({ seconds, eightFigures }) => {
    const at = new Date(seconds * 1_000)
    expect(codeAt(secret, at)).toBe(eightFigures.slice(-6))
    expect(stepOfCode(secret, eightFigures.slice(-6), at)).toBe(Math.floor(seconds / 30))
  })

  test('of the step before or after is taken, and belongs to that step; further away it is none', () => {
    const at = new Date(1_111_111_125_000)
    const step = Math.floor(1_111_111_125 / 30)
    const codeOf = (other: number) => codeAt(secret, new Date(other * 30_000))
    expect([-1, 0, 1].map((away) => stepOfCode(secret, codeOf(step + away), at))).toEqual([
      step - 1,
      step,
      step + 1,
    ])
    expect([-2, 2].map((away) => stepOfCode(secret, codeOf(step + away), at))).toEqual([undefined, undefined])
  })

  test.each(['', '12345', '1234567', 'abcdef', '１２３４５６', '12 34 5'])('is not: %j', (code) => {
    expect(stepOfCode(secret, code, new Date(59_000))).toBeUndefined()
  })

  test('may be written with a blank in it', () => {
    expect(stepOfCode(secret, ' 287 082 ', new Date(59_000))).toBe(1)
  })

  test('comes of a secret of 160 bits, which an authenticator reads with its figures', () => {
    const made = newSecret()
    expect(made).toMatch(/^[A-Z2-7]{32}$/)
    expect(newSecret()).not.toBe(made)
    expect(secretAddress(made, 'records.desk')).toMatch(
      /^otpauth:\/\/totp\/Asfound:records\.desk\?(?=.*issuer=Asfound)(?=.*secret=[A-Z2-7]{32})(?=.*digits=6)(?=.*period=30)/,
    )
  })
})

describe('recovery codes', () => {
  test('are ten of 120 bits, known again however they are written', () => {
    const codes = newRecoveryCodes()
    expect(new Set(codes).size).toBe(10)
    for (const code of codes) expect(code).toMatch(/^([0-9a-hjkmnp-tv-z]{4}-){5}[0-9a-hjkmnp-tv-z]{4}$/)
    const [code] = codes
    expect(recoveryHash(` ${code!.toUpperCase().replaceAll('-', ' ')} `)).toEqual(recoveryHash(code!))
    expect(recoveryHash('o1l0-i'.padEnd(24, '2'))).toEqual(recoveryHash('01101'.padEnd(23, '2')))
  })
})
