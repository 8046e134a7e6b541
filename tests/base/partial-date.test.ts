import { describe, expect, test } from 'vitest'
import {
  daysOf,
  firstDay,
  isBy,
  lastDay,
  laterOf,
  type PartialDate,
  partialDate,
} from '../../src/base/partial-date.ts'
import type { PlainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'

const date = (text: string): PartialDate => must(partialDate(text))
const day = (text: string) => text as PlainDate

describe('a date as far as it is known', () => {
  test.each([
    ['1977', '1977-01-01', '1977-12-31'],
    ['1977-09', '1977-09-01', '1977-09-30'],
    ['1976-02', '1976-02-01', '1976-02-29'],
    ['1977-12', '1977-12-01', '1977-12-31'],
    ['1977-05-09', '1977-05-09', '1977-05-09'],
  ])('%s runs from %s to %s', (text, first, last) => {
    expect([firstDay(date(text)), lastDay(date(text))]).toEqual([first, last])
  })
  test.each(['77', '1977-13', '1977-00', '1977-9', '1599', '1977-02-29', ''])('%j is refused', (text) => {
    expect(partialDate(text).ok).toBe(false)
  })
  test('a comparison is answered where the missing part does not matter', () => {
    expect(isBy(date('1977'), day('1978-01-01'))).toBe(true)
    expect(isBy(date('1977'), day('1976-12-31'))).toBe(false)
    expect(isBy(date('1977'), day('1977-06-01'))).toBeNull()
    expect(isBy(date('1977'), day('1977-12-31'))).toBe(true)
    expect(isBy(date('1977-09'), day('1977-06-01'))).toBe(false)
  })
  test('the later of two is all the days that it may be', () => {
    expect(laterOf(daysOf(date('1977')), daysOf(date('1977-05-09')))).toEqual({
      first: '1977-05-09',
      last: '1977-12-31',
    })
    expect(laterOf(daysOf(date('1977')), daysOf(date('1980')))).toEqual({
      first: '1980-01-01',
      last: '1980-12-31',
    })
  })
})
