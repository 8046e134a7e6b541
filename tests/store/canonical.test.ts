import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { canonicalText } from '../../src/base/canonical.ts'
import { hashOf, sha256 } from '../../src/store/hash.ts'

describe('canonical text', () => {
  test('as RFC 8785, 3.2.3, sorts and prints it', () => {
    const value = {
      // The first as JSON text: its last figures are beyond what a number holds, which is the example's point.
      numbers: [JSON.parse('333333333.33333329'), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    }
    expect(canonicalText(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],' +
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    )
  })

  test('is the same whatever order keys were made in, and after a journey as JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalText(value)
        expect(canonicalText(JSON.parse(JSON.stringify(value)))).toBe(text)
        expect(canonicalText(JSON.parse(text))).toBe(text)
      }),
    )
    expect(hashOf({ a: 1, b: { c: 2, d: 3 } })).toBe(hashOf({ b: { d: 3, c: 2 }, a: 1 }))
  })

  test('takes one object in two places for what it is, not for a circle', () => {
    const shared = { ft: 4.5 }
    expect(canonicalText({ a: shared, ab: { a: shared }, abc: shared })).toBe(
      '{"a":{"ft":4.5},"ab":{"a":{"ft":4.5}},"abc":{"ft":4.5}}',
    )
  })

  test('the hash is SHA-256 in hexadecimal (FIPS 180-4: "abc")', () => {
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })
})
