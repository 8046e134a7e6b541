import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addDays } from '../../../src/base/plain-date.ts'
import { countingDays, countsUntil } from '../../../src/rules/apply/transfer-window.ts'
import { inForce } from '../../../src/rules/in-force.ts'
import { day } from '../day.ts'
import { SHIPPED } from '../shipped-book.ts'

const window = (place: string) => {
  const answer = inForce(SHIPPED, place, 'transfer.inspection-window-days', day('2020-01-01'))
  if (answer.state !== 'in-force') throw new Error(answer.state)
  return answer.value
}
const plain = { pumpedYearly: false, weather: false }

describe('310 CMR 15.301(1): two years before, three if pumped every year, six months after for weather', () => {
  const rule = window('massachusetts')
  test.each([
    [plain, '2018-06-15', '2020-06-15'],
    [{ ...plain, pumpedYearly: true }, '2017-06-15', '2020-06-15'],
    [{ ...plain, weather: true }, '2018-06-15', '2020-12-15'],
  ])('%o', (facts, first, last) => {
    expect(countingDays(rule, day('2020-06-15'), facts)).toEqual({ first, last })
  })
})

test('Pima County 7.21.050 and Arizona R18-9-A316: six months before', () => {
  for (const place of ['pima-county', 'arizona'])
    expect(countingDays(window(place), day('2020-08-31'), plain).first).toBe('2020-02-29')
})

test('567 IAC 69.2 as an Iowa county tells it: an inspection is good for two years', () => {
  expect(countingDays(window('iowa'), day('2020-08-31'), plain)).toEqual({
    first: '2018-08-31',
    last: '2020-08-31',
  })
  expect(countsUntil(window('iowa'), day('2020-08-31'))).toBe('2022-08-31')
})

test('a rule without an age limit never runs out', () => {
  const open = { before: null, ifPumpedYearly: null, afterIfWeather: null }
  expect(countingDays(open, day('2020-08-31'), plain)).toEqual({ first: null, last: '2020-08-31' })
  expect(countsUntil(open, day('2020-08-31'))).toBeNull()
})

test('an inspection counts for a transfer just when the transfer falls by its last day', () => {
  const rule = window('massachusetts')
  const days = fc.integer({ min: 0, max: 2000 }).map((n) => addDays(day('2019-01-01'), n))
  fc.assert(
    fc.property(days, days, (inspected, transfer) => {
      fc.pre(inspected <= transfer)
      // 29 February has no twin two years on: the two ways of counting may differ by that one day.
      fc.pre(!inspected.endsWith('-02-29') && !transfer.endsWith('-02-29'))
      const { first } = countingDays(rule, transfer, plain)
      expect(inspected >= first!).toBe(transfer <= countsUntil(rule, inspected)!)
    }),
  )
})
