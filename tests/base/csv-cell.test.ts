import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { csvCell } from '../../src/base/csv-cell.ts'

describe('a field of a CSV line', () => {
  // RFC 4180, section 2: fields with a break, a quote or a comma are quoted; a quote is doubled.
  test.each([
    ['plain', 'plain'],
    ['a,b', '"a,b"'],
    ['say "hi"', '"say ""hi"""'],
    ['two\nlines', '"two\nlines"'],
    ['', ''],
    [null, ''],
    [-12.5, '-12.5'],
    [true, 'true'],
  ])('%j', (value, written) => expect(csvCell(value)).toBe(written))

  // OWASP, CSV Injection: cells that begin with these are taken for formulas (from memory).
  test.each(['=1+1', '+1+1', '-1+1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1', '\ufeff=1'])(
    '%j can’t become a formula',
    (text) => expect(csvCell(text).replace(/^"/, '').startsWith("'")).toBe(true),
  )

  test('a signed figure stays a figure', () => {
    expect([csvCell('-3'), csvCell('+0.5'), csvCell('-3 gal')]).toEqual(['-3', '+0.5', "'-3 gal"])
  })

  test('of any text: reads back as it was, but for the apostrophe, and never begins a formula', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const cell = csvCell(text)
        const read = cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell
        expect([text, `'${text}`]).toContain(read)
        expect(/^\s*[=+@-]/.test(read) && !/^[+-]\d/.test(read)).toBe(false)
      }),
    )
  })
})
