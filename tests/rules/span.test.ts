import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addDays } from '../../src/base/plain-date.ts'
import { ALWAYS, holdsOn, overlap, type Span } from '../../src/rules/span.ts'
import { day } from './day.ts'

const date = fc.integer({ min: 0, max: 60 }).map((n) => addDays(day('2000-01-01'), n))
const edge = fc.option(date, { nil: null })
const span = fc
  .record({ from: edge, until: edge })
  .filter(({ from, until }) => from === null || until === null || from < until)

test('two spans overlap just on the days on which both hold', () => {
  fc.assert(
    fc.property(span, span, date, (a: Span, b: Span, on) => {
      const both = overlap(a, b)
      expect(both !== null && holdsOn(both, on)).toBe(holdsOn(a, on) && holdsOn(b, on))
      expect(overlap(b, a)).toEqual(both)
      expect(overlap(a, ALWAYS)).toEqual(a)
    }),
  )
})

test('until is the first day it no longer holds', () => {
  const it = { from: day('2000-01-01'), until: day('2001-01-01') }
  expect(['1999-12-31', '2000-01-01', '2000-12-31', '2001-01-01'].map((on) => holdsOn(it, day(on)))).toEqual([
    false,
    true,
    true,
    false,
  ])
})
