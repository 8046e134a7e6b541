import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { newCode, readCode } from '../../src/letters/code.ts'

const SIGNS = [...'34679ACDEFGHJKMNPQRTWXY']
const codes = fc.integer().map(() => newCode())

describe('codes', () => {
  test('are four groups of four, with no two signs that look alike', () => {
    const drawn = Array.from({ length: 500 }, newCode)
    for (const code of drawn)
      expect(code).toMatch(/^[34679ACDEFGHJKMNPQRTWXY]{4}(-[34679ACDEFGHJKMNPQRTWXY]{4}){3}$/)
    expect(new Set(drawn).size).toBe(500)
    for (const [a, b] of ['0O', '1I', '1L', 'IL', '2Z', '5S', '8B', 'UV']) {
      expect(SIGNS.includes(a!) && SIGNS.includes(b!)).toBe(false)
    }
  })

  test('hold every sign at every place about equally often', () => {
    const counts = new Map<string, number>()
    const drawn = Array.from({ length: 2_300 }, newCode).flatMap((code) => [...code.replaceAll('-', '')])
    for (const sign of drawn) counts.set(sign, (counts.get(sign) ?? 0) + 1)
    // 36,800 signs over 23: 1,600 each with a standard deviation of 39; five of those are not passed by chance.
    for (const sign of SIGNS) expect(Math.abs((counts.get(sign) ?? 0) - 1_600)).toBeLessThan(200)
  })

  test('are read in any case and spacing', () => {
    fc.assert(
      fc.property(codes, (code) => {
        expect(must(readCode(code))).toBe(code)
        expect(must(readCode(` ${code.toLowerCase().replaceAll('-', ' ')} `))).toBe(code)
        expect(must(readCode(code.replaceAll('-', '')))).toBe(code)
        expect(must(readCode(code.replaceAll('-', '–')))).toBe(code)
      }),
    )
  })

  test('every single wrong sign is noticed, and every two that changed places', () => {
    fc.assert(
      fc.property(codes, fc.nat(15), fc.nat(15), fc.constantFrom(...SIGNS), (code, at, other, sign) => {
        const signs = [...code.replaceAll('-', '')]
        const wrong = signs.with(at, sign)
        expect(readCode(wrong.join('')).ok).toBe(signs[at] === sign)
        const swapped = signs.with(at, signs[other]!).with(other, signs[at]!)
        expect(readCode(swapped.join('')).ok).toBe(signs[at] === signs[other])
      }),
    )
  })

  test('what is wrong is said', () => {
    expect(readCode('H7KQ-3MXR-9CWO-4FJD')).toEqual({ ok: false, error: { why: 'foreign-sign', sign: 'O' } })
    expect(readCode('H7KQ-3MXR')).toEqual({ ok: false, error: { why: 'length', given: 8, wanted: 16 } })
    expect(readCode('')).toEqual({ ok: false, error: { why: 'length', given: 0, wanted: 16 } })
    expect(readCode('H7KQ-3MXR-9CWA-4FJD')).toEqual({ ok: false, error: { why: 'mistyped' } })
  })
})
