import { expect, test } from 'vitest'
import { range, rangeInWords, within } from '../../../src/rules/values/quantity.ts'

const inches = range('in')

test.each([
  [
    { unit: 'in', atLeast: 6, atMost: 8 },
    'at least 6 and at most 8 in',
    [5.9, 6, 8, 8.1],
    [false, true, true, false],
  ],
  [
    { unit: 'in', moreThan: 1, lessThan: 2 },
    'more than 1 and less than 2 in',
    [1, 1.5, 2],
    [false, true, false],
  ],
  [{ unit: 'in', atLeast: 18 }, 'at least 18 in', [17, 18, 99], [false, true, true]],
])('%o reads "%s"', (raw, words, values, inside) => {
  const it = inches.parse(raw)
  expect(rangeInWords(it)).toBe(words)
  expect(values.map((value) => within(it, value))).toEqual(inside)
})

test.each([
  [{ unit: 'in' }, 'at least one of'],
  [{ unit: 'in', atLeast: 9, atMost: 8 }, 'the low end lies above the high end'],
  [{ unit: 'in', atLeast: 9, moreThan: 8 }, 'not both'],
  [{ unit: 'ft', atLeast: 9 }, '"path":["unit"]'],
])('%o is refused', (raw, why) => {
  expect(JSON.stringify(inches.safeParse(raw).error?.issues)).toContain(why)
})
