import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseDate, parsePartialDate } from '../../src/reading/date.ts'

describe('dates as permits write them', () => {
  test.each([
    ['1974-05-03', '1974-05-03'],
    ['5/3/74', '1974-05-03'],
    ['05-03-1974', '1974-05-03'],
    ['5.3.74', '1974-05-03'],
    ["5/3/'74", '1974-05-03'],
    ['May 3, 1974', '1974-05-03'],
    ['MAY 3 1974', '1974-05-03'],
    ['May 9,1977', '1977-05-09'],
    ['1977/05/09', '1977-05-09'],
    ['1977.5.9', '1977-05-09'],
    ['Sept. 9th, 1958', '1958-09-09'],
    ['3 May 1974', '1974-05-03'],
    ['3-May-74', '1974-05-03'],
    ['2/29/2000', '2000-02-29'],
    ['1/1/05', '2005-01-01'],
    ['12/31/30', '1930-12-31'],
  ])('%s is %s', (written, date) => {
    expect(parseDate(written)).toEqual({ ok: true, value: date })
  })

  test.each([
    ['13/5/1974', 'write 5/13/1974'],
    ['2/29/1975', 'no day'],
    ['1974', 'write YYYY-MM-DD'],
    ['May 1974', 'write YYYY-MM-DD'],
    ['Foo 3, 1974', 'not a month'],
    ['0/0/0000', 'year 1600'],
    ['', 'write YYYY-MM-DD'],
  ])('%s is refused, saying what to write', (written, words) => {
    const result = parseDate(written)
    expect(result.ok).toBe(false)
    expect(!result.ok && result.error).toContain(words)
  })

  test('nothing throws', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => typeof parseDate(text).ok === 'boolean'))
  })
})

describe('dates as far as old cards tell them', () => {
  test.each([
    ["Sept. '77", '1977-09'],
    ['Sept 1977', '1977-09'],
    ['September, 1977', '1977-09'],
    ['9/77', '1977-09'],
    ['9/1977', '1977-09'],
    ["9/'77", '1977-09'],
    ['1977-09', '1977-09'],
    ['1977', '1977'],
    ["'77", '1977'],
    ['May 9,1977', '1977-05-09'],
    ['5/9/77', '1977-05-09'],
  ])('%s is %s', (written, date) => {
    expect(parsePartialDate(written)).toEqual({ ok: true, value: date })
  })
  test.each([
    ['13/77', 'no month 13'],
    ['spring 1977', 'Sept. 1977, 9/77 or 1977'],
    ['77', 'Sept. 1977, 9/77 or 1977'],
    ['1500', 'before the year 1600'],
  ])('%s is refused, saying what to write', (written, words) => {
    const result = parsePartialDate(written)
    expect(!result.ok && result.error).toContain(words)
  })
  test('nothing throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => typeof parsePartialDate(text).ok === 'boolean'),
    )
  })
})
