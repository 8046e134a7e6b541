import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addDays, type PlainDate } from '../../../src/base/plain-date.ts'
import { must } from '../../../src/base/result.ts'
import { nextPumpOut, type PumpOutTable } from '../../../src/geometry/solids/next-pump-out.ts'
import { exact, expanded, uncertain } from '../../../src/measure/uncertain.ts'
import { looseness, monteCarlo } from '../../measure/monte-carlo.ts'
import oracle from '../../oracles/solids/pump-out-years.json' with { type: 'json' }

const table: PumpOutTable = oracle.table
const pumped = '2024-03-01' as PlainDate
const at = (gal: number, people: number) => nextPumpOut(table, exact(gal), people, pumped)

const cells = table.rows.flatMap(({ gal, years }) =>
  years.map((value, i) => ({ gal, people: table.people[i]!, years: value })),
)

describe(oracle.source, () => {
  test.each(cells)('$gal gal, $people people: $years years', ({ gal, people, years }) => {
    const answer = at(gal, people)
    if (years === null) return expect(answer.ok).toBe(false)
    expect(must(answer).value.years.value).toBe(years)
    expect(must(answer).value.interpolated).toBe(false)
    return expect(must(answer).value.dueOn).toBe(addDays(pumped, Math.round(years * 365.25)))
  })
})

describe('between the entries', () => {
  test('by hand: 950 gal, 3 people lies halfway from 3.3 to 3.7; 3.5 people at 1,000 gal from 3.7 to 2.6', () => {
    expect(must(at(950, 3)).value.years.value).toBeCloseTo(3.5, 12)
    expect(must(at(1000, 3.5)).value.years.value).toBeCloseTo(3.15, 12)
    expect(must(at(950, 3.5)).value.years.value).toBeCloseTo((3.3 + 2.3 + 3.7 + 2.6) / 4, 12)
  })
  test('it says that it lies between, in the answer and in the working', () => {
    const { value, steps } = must(at(950, 3))
    expect(value.interpolated).toBe(true)
    expect(steps[0]!.says).toContain('linear between its entries')
    expect(must(at(1000, 3)).steps[0]!.says).not.toContain('linear')
  })
  test('an answer never leaves its neighbors, and more people never wait longer', () => {
    const gal = fc.double({ min: 500, max: 2500, noNaN: true })
    const people = fc.double({ min: 1, max: 9, noNaN: true })
    fc.assert(
      fc.property(gal, people, fc.double({ min: 0, max: 1, noNaN: true }), (size, count, more) => {
        const fewer = at(size, count)
        const larger = at(size, count + more)
        if (!fewer.ok || !larger.ok) return
        expect(larger.value.value.years.value).toBeLessThanOrEqual(fewer.value.value.years.value + 1e-9)
        expect(must(at(Math.min(2500, size + 100), count)).value.years.value).toBeGreaterThanOrEqual(
          fewer.value.value.years.value - 1e-9,
        )
      }),
    )
  })
})

test('an uncertain capacity makes an earliest day', () => {
  const answer = must(nextPumpOut(table, uncertain(950, 25, 'tank'), 3, pumped)).value
  // Slope between 900 and 1,000 gal: 0.4 years per 100 gal; U = 50 gal.
  expect(expanded(answer.years)).toBeCloseTo(0.2, 12)
  expect(answer.earliest < answer.dueOn).toBe(true)
  const drawn = monteCarlo(([gal = 0]) => must(at(gal, 3)).value.years.value, [uncertain(950, 10, 'tank')], {
    trials: 20_000,
  })
  const near = must(nextPumpOut(table, uncertain(950, 10, 'tank'), 3, pumped)).value
  expect(Math.abs(expanded(near.years) / 2 / drawn.standardDeviation - 1)).toBeLessThan(looseness(20_000))
})

test('outside the table there is no answer, and the refusal names the table', () => {
  for (const [gal, people] of [
    [400, 2],
    [3000, 2],
    [1000, 0],
    [1000, 11],
    [500, 9.5],
  ] as const) {
    const answer = at(gal, people)
    expect(answer.ok ? '' : answer.error).toContain(table.table)
  }
})
