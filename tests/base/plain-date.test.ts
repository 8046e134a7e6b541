import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  addDays,
  addMonths,
  addYears,
  compareDates,
  daysBetween,
  isPlainDate,
  plainDate,
} from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'

const day = (text: string) => must(plainDate(text))
const anyDay = fc.integer({ min: -100_000, max: 100_000 }).map((n) => addDays(day('2000-01-01'), n))

describe('a calendar day', () => {
  test.each([
    ['2024-02-29', true],
    ['2023-02-29', false],
    ['1900-02-29', false],
    ['2000-02-29', true],
    ['1974-13-01', false],
    ['1974-04-31', false],
    ['1974-4-3', false],
    ['1599-12-31', false],
    [' 1974-05-03', false],
    ['1974-05-03T00:00:00Z', false],
  ])('%s: %s', (text, real) => {
    expect(isPlainDate(text)).toBe(real)
  })

  test('a month later keeps the day, or ends with the month', () => {
    expect(addMonths(day('2026-01-31'), 1)).toBe('2026-02-28')
    expect(addMonths(day('2024-01-31'), 1)).toBe('2024-02-29')
    expect(addMonths(day('2026-08-31'), -6)).toBe('2026-02-28')
    expect(addYears(day('2024-02-29'), 1)).toBe('2025-02-28')
    expect(addMonths(day('2026-12-15'), 1)).toBe('2027-01-15')
  })

  test('days add up, and sort as text', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -5000, max: 5000 }), (from, days) => {
        const to = addDays(from, days)
        expect(daysBetween(from, to)).toBe(days)
        expect(Math.sign(compareDates(to, from))).toBe(Math.sign(days))
        expect(isPlainDate(to)).toBe(true)
      }),
    )
  })
})
