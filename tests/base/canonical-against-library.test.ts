import fc from 'fast-check'
import { canonicalize } from 'json-canonicalize'
import { expect, test } from 'vitest'
import { canonicalText } from '../../src/base/canonical.ts'

/** Keys that sort otherwise as numbers, as code points and as code units. */
const key = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom('10', '9', '\u20ac', '\r', '\ufb33', '\u{1f600}', '1', '', '__proto__x'),
)
const value = fc.letrec<{ any: unknown }>((tie) => ({
  any: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom(null, true, false, undefined),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.integer(),
    fc.string({ unit: 'grapheme' }),
    fc.date({ noInvalidDate: true }),
    fc.array(tie('any'), { maxLength: 4 }),
    fc.dictionary(key, tie('any'), { maxKeys: 5 }),
  ),
})).any

test('is what a library of RFC 8785 writes', () => {
  fc.assert(
    fc.property(fc.dictionary(key, value), (it) => {
      expect(canonicalText(it)).toBe(canonicalize(JSON.parse(JSON.stringify(it))))
    }),
    { numRuns: 500 },
  )
})

test('the example of RFC 8785, section 3.2.3: keys in the order of their UTF-16 code units', () => {
  const said = {
    '\u20ac': 'Euro Sign',
    '\r': 'Carriage Return',
    '\ufb33': 'Hebrew Letter Dalet With Dagesh',
    '1': 'One',
    '\ud83d\ude00': 'Emoji: Grinning Face',
    '\u0080': 'Control',
    '\u00f6': 'Latin Small Letter O With Diaeresis',
  }
  expect(Object.values(JSON.parse(canonicalText(said)) as object).length).toBe(7)
  const order = [...canonicalText(said).matchAll(/:"([^"]+)"/g)].map(([, text]) => text)
  expect(order).toEqual([
    'Carriage Return',
    'One',
    'Control',
    'Latin Small Letter O With Diaeresis',
    'Euro Sign',
    'Emoji: Grinning Face',
    'Hebrew Letter Dalet With Dagesh',
  ])
})
