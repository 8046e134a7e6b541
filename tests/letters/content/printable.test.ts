import fc from 'fast-check'
import { afterAll, describe, expect, test } from 'vitest'
import {
  PRINTABLE,
  printable,
  printableThroughout,
  REPLACEMENT,
} from '../../../src/letters/content/printable.ts'
import { openPress } from '../../../src/letters/press/press.ts'
import { openLetter } from '../open-letter.ts'
import { factsOf, frameOf, statusSheet, twelve } from '../samples.ts'

const press = openPress()
afterAll(press.close)
const facts = factsOf(twelve)
const withAddress = (address: string) =>
  statusSheet(facts, frameOf('status', { parcel: { number: '07-0412-0031', address } }))

describe('printable text', () => {
  test('every character that counts as printable has its glyph in every weight used', async () => {
    const all = PRINTABLE.flatMap(([from, to]) =>
      Array.from({ length: to - from + 1 }, (_, at) => String.fromCodePoint(from + at)),
    )
    for (let at = 0; at < all.length; at += 120) {
      const some = all.slice(at, at + 120).join(' ')
      const status = {
        ...facts.status,
        sentence: some,
        outstanding: [{ says: some, who: 'owner' as const, what: some }],
      }
      const frame = frameOf('status', { parcel: { number: some, address: some }, code: some.slice(0, 60) })
      const { pdf } = await press.print({ ...statusSheet({ ...facts, status }, frame), mostPages: null })
      expect(pdf.length).toBeGreaterThan(10_000)
    }
  })

  test('the fonts’ lack of a character is shown and never guessed', () => {
    expect(printable('Tänk 漢字 1')).toBe(`Tänk ${REPLACEMENT}${REPLACEMENT} 1`)
    expect(printable('a\u0000b\u0007c\u200dd\u202ee\u00adf')).toBe('abcdef')
    expect(printable(' a\u00a0\t\n b\u2028\u2003c ')).toBe('a b c')
    expect(printable('e\u0301')).toBe('é')
    expect(printable('d ᵀ')).toBe('d ^T')
  })

  test('text that anybody could type prints, whatever it is', async () => {
    const rough = [
      '\u2028\u2029\u0000\u0001',
      '\u202e14 Heron\u202c \u{e000}\u{f8ff}\u{fffe}',
      '\u200b\u200c\u200d\u2060\ufeff',
      '漢字かな한글العربيةעברית हिन्दी 👩‍👩‍👧‍👦',
      'a'.repeat(2_000),
      '\ud800 half a pair',
      '#read("/etc/passwd") $x^2$ *bold* <label> @ref \\ #panic()',
    ]
    for (const address of rough) {
      const { pages } = await press.print(withAddress(address))
      expect(pages).toBeLessThanOrEqual(2)
    }
  })

  test('and what is typed is never read as markup', async () => {
    const address = '#read("/etc/passwd") *bold* $x$ #import "look.typ": *'
    const { pdf } = await press.print(withAddress(address))
    expect((await openLetter(pdf)).text[0]).toContain(address)
  })

  test('what is left out between two spaces leaves one', () => {
    expect(printable('a \u0001 b')).toBe('a b')
  })

  test('a property: whatever comes in, only printable characters go out, and once is enough', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const out = printable(text)
        expect(printable(out)).toBe(out)
        const points = [...out].map((sign) => sign.codePointAt(0)!)
        expect(points.every((point) => PRINTABLE.some(([from, to]) => from <= point && point <= to))).toBe(
          true,
        )
      }),
    )
  })

  test('a structure is gone through, and markup of our own is left alone', () => {
    const from = { a: ['x\u0000', { svg: '<svg>\u0000</svg>' }], n: 3, none: null, yes: true }
    expect(printableThroughout(from)).toEqual({
      a: ['x', { svg: '<svg>\u0000</svg>' }],
      n: 3,
      none: null,
      yes: true,
    })
  })
})
