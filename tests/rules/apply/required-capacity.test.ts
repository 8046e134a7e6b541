import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { type Household, requiredCapacity } from '../../../src/rules/apply/required-capacity.ts'
import { inForce } from '../../../src/rules/in-force.ts'
import type { CapacityRule } from '../../../src/rules/values/capacity-rule.ts'
import byBedrooms from '../../oracles/tank-capacity/by-bedrooms.json' with { type: 'json' }
import byFlow from '../../oracles/tank-capacity/by-flow.json' with { type: 'json' }
import others from '../../oracles/tank-capacity/other-buildings.json' with { type: 'json' }
import { day } from '../day.ts'
import { SHIPPED } from '../shipped-book.ts'

const rule = (place: string, on: string) => {
  const answer = inForce(SHIPPED, place, 'tank.minimum-capacity', day(on))
  if (answer.state !== 'in-force') throw new Error(`${place} on ${on}: ${answer.state}`)
  return answer
}
const bedrooms = (count: number, more: Partial<Household> = {}): Household => ({
  bedrooms: count,
  flowGpd: null,
  ...more,
})
const flow = (gpd: number): Household => ({ bedrooms: null, flowGpd: gpd })

describe('published tables by bedrooms', () => {
  for (const { source, place, on, galByBedrooms } of byBedrooms.cases)
    test.each(Object.entries(galByBedrooms))(`${source}: %s bedrooms`, (count, gal) => {
      expect(must(requiredCapacity(rule(place, on), bedrooms(Number(count)))).value).toBe(gal)
    })

  test.each(byBedrooms.cases)('$source says how it was verified: $status', ({ place, on, status }) => {
    const { citations } = rule(place, on)
    expect(citations.map((it) => it.verified)).toContain(status)
  })
})

describe('published formulas by flow', () => {
  for (const { source, place, on, galByFlow } of byFlow.cases)
    test.each(galByFlow as [number, number][])(`${source}: %d gpd`, (gpd, gal) => {
      const it = requiredCapacity(
        rule(place, on),
        place === 'north-carolina' ? { bedrooms: 6, flowGpd: gpd } : flow(gpd),
      )
      // North Carolina's own floor of 1,000 gal stands over its smallest flows.
      const least = place === 'north-carolina' ? 1000 : 900
      expect(Math.abs(must(it).value - Math.max(least, gal))).toBeLessThanOrEqual(byFlow.tolerance.gal)
    })

  const pennsylvania = byFlow.cases.find((it) => it.place === 'pennsylvania')!
  test.each(Object.entries(pennsylvania.galByBedrooms ?? {}))(
    '25 Pa. Code 73.31: %s bedrooms',
    (count, gal) => {
      expect(must(requiredCapacity(rule('pennsylvania', '2005-01-01'), bedrooms(Number(count)))).value).toBe(
        gal,
      )
    },
  )
})

describe('buildings that are no dwelling', () => {
  for (const { source, place, on, galByFlow } of others.cases)
    test.each(galByFlow as [number, number][])(`${source}: %d gpd`, (gpd, gal) => {
      const it = inForce(SHIPPED, place, 'tank.minimum-capacity-by-flow', day(on))
      if (it.state !== 'in-force') throw new Error(`${place} on ${on}: ${it.state}`)
      expect(Math.abs(must(requiredCapacity(it, flow(gpd))).value - gal)).toBeLessThanOrEqual(
        others.tolerance.gal,
      )
    })

  test('South Carolina’s copy ends at 4,500 gpd, and nothing is said beyond', () => {
    const it = inForce(SHIPPED, 'south-carolina', 'tank.minimum-capacity-by-flow', day('2022-01-01'))
    expect(it.state === 'in-force' && requiredCapacity(it, flow(4501))).toMatchObject({
      error: { reason: 'beyond-table' },
    })
  })
})

describe('beyond the table', () => {
  test.each([
    ['ohio: the last row holds for more', 'ohio', '2010-01-01', 9, 2500],
    ['minnesota pattern: 250 more for each', 'minnesota-pattern', '1989-06-01', 8, 2250],
    ['US PHS: 250 more for each', 'public-health-service', '1970-01-01', 6, 1500],
    ['UPC: 150 more for each', 'upc', '2000-01-01', 8, 1800],
    [
      'North Dakota prints 2,000 where the plumbing code adds up to 1,800',
      'north-dakota',
      '2010-01-01',
      8,
      2000,
    ],
  ])('%s', (_, place, on, count, gal) => {
    expect(must(requiredCapacity(rule(place, on), bedrooms(count))).value).toBe(gal)
  })

  test('a table that ends says so', () => {
    expect(requiredCapacity(rule('new-york', '2000-01-01'), bedrooms(7))).toEqual({
      ok: false,
      error: { reason: 'beyond-table', table: '75-A.6', given: '7 bedrooms', among: [] },
    })
  })

  test('Virginia goes on by 48 hours of the design flow, and asks for it', () => {
    expect(requiredCapacity(rule('virginia', '2005-01-01'), bedrooms(6))).toMatchObject({
      error: { reason: 'needs-flow' },
    })
    expect(must(requiredCapacity(rule('virginia', '2005-01-01'), bedrooms(6, { flowGpd: 900 }))).value).toBe(
      1800,
    )
  })
})

describe('what a rule needs and does not get', () => {
  test.each([null, 2.5, -1, Number.NaN])('bedrooms: %s', (count) => {
    const house = { bedrooms: count, flowGpd: null }
    expect(requiredCapacity(rule('virginia', '2005-01-01'), house)).toMatchObject({
      error: { reason: 'needs-bedrooms' },
    })
  })

  test('a formula by flow takes the flow, else the bedrooms, else says so', () => {
    const it = rule('pennsylvania', '2005-01-01')
    expect(must(requiredCapacity(it, { bedrooms: 3, flowGpd: 600 })).value).toBe(1400)
    expect(must(requiredCapacity(it, { bedrooms: 5, flowGpd: null })).value).toBe(1400)
    expect(requiredCapacity(it, { bedrooms: null, flowGpd: null })).toMatchObject({
      error: { reason: 'needs-flow' },
    })
  })
})

test('a pump before the tank doubles North Carolina’s size; a grinder takes half as much again in Minnesota', () => {
  const pumped = bedrooms(5, { burdens: ['lift-pump'] })
  expect(must(requiredCapacity(rule('north-carolina', '2024-06-01'), pumped)).value).toBe(2500)
  const ground = bedrooms(4, { burdens: ['garbage-grinder'] })
  expect(must(requiredCapacity(rule('minnesota', '2014-01-01'), ground)).value).toBe(2250)
})

test('Rhode Island adds 250 gallons for a grinder, and 250 for a large tub', () => {
  const ask = (...burdens: Household['burdens'] & object) =>
    must(requiredCapacity(rule('rhode-island', '2024-12-26'), bedrooms(3, { burdens })))
  expect(ask('garbage-grinder').value).toBe(1250)
  expect(ask('large-tub').value).toBe(1250)
  const both = ask('garbage-grinder', 'large-tub')
  expect(both.value).toBe(1500)
  expect(both.steps.slice(1, 3)).toEqual([
    { says: 'With garbage grinder', formula: 'V + addition', numbers: '1,000 + 250', result: '1,250 gal' },
    { says: 'With large tub', formula: 'V + addition', numbers: '1,250 + 250', result: '1,500 gal' },
  ])
})

test('Hawaii beyond five bedrooms: 1,000 + (Q − 800) × 1.25', () => {
  const it = rule('hawaii', '2016-03-21')
  expect(requiredCapacity(it, bedrooms(6))).toMatchObject({ error: { reason: 'needs-flow' } })
  expect(must(requiredCapacity(it, bedrooms(6, { flowGpd: 1200 }))).value).toBe(1500)
})

test('a table of its own for a burden, and the largest of several rules', () => {
  const plain = { adjustments: [], minimumGal: 0 }
  const small: CapacityRule = {
    by: 'bedrooms',
    table: 'A',
    rows: [{ bedrooms: 2, gal: 1500 }],
    more: { rule: 'open-top' },
    ...plain,
  }
  const large: CapacityRule = { ...small, table: 'B', rows: [{ bedrooms: 2, gal: 2250 }] }
  const cited = (value: CapacityRule) => ({ value, citations: [] })
  const own: CapacityRule = {
    ...small,
    adjustments: [{ when: ['garbage-grinder', 'lift-pump'], rule: large }],
  }
  expect(must(requiredCapacity(cited(own), bedrooms(2, { burdens: ['lift-pump'] }))).value).toBe(2250)
  expect(must(requiredCapacity(cited(own), bedrooms(2))).value).toBe(1500)
  const both: CapacityRule = { by: 'largest-of', table: 'C', rules: [small, large], ...plain }
  expect(must(requiredCapacity(cited(both), bedrooms(1))).value).toBe(2250)
})

test('the working names the row, the formula with its numbers, and the source with its status', () => {
  const table = must(requiredCapacity(rule('virginia', '2005-01-01'), bedrooms(3)))
  expect(table.steps).toEqual([
    {
      says: 'Table 5.2, row for the bedroom count',
      formula: 'V = the row',
      numbers: '3 bedrooms: row 3',
      result: '900 gal',
    },
    {
      says: 'Minimum capacity required',
      formula: 'Table 5.2',
      numbers:
        'Virginia Department of Health, Sewage Handling and Disposal Regulations, 12VAC5-610-815 A, Table 5.2',
      result: '900 gal',
    },
  ])
  const formula = must(requiredCapacity(rule('pennsylvania', '2005-01-01'), bedrooms(5)))
  expect(formula.steps[1]).toEqual({
    says: '73.31(a)(3), the piece for 500 < Q ≤ 5,000 gpd',
    formula: 'V = 1.5·(Q − 500) + 1,250',
    numbers: '1.5 × (600 − 500) + 1,250',
    result: '1,400 gal',
  })
  const remembered = must(requiredCapacity(rule('public-health-service', '1970-01-01'), bedrooms(3)))
  expect(remembered.steps.at(-1)?.numbers).toContain('(from memory, not read)')
})

const places = [...new Set([...byBedrooms.cases, ...byFlow.cases].map((it) => [it.place, it.on] as const))]

test('one bedroom more never asks for less', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...places),
      fc.integer({ min: 0, max: 12 }),
      fc.constantFrom(1200, 2000),
      ([place, on], count, gpd) => {
        const [less, more] = [count, count + 1].map((it) =>
          requiredCapacity(rule(place, on), bedrooms(it, { flowGpd: gpd })),
        )
        fc.pre(less!.ok && more!.ok)
        // North Carolina hands over from its bedroom table to the flow that was given, which knows nothing of bedrooms.
        fc.pre(!(place === 'north-carolina' || place === 'virginia') || count + 1 <= 5)
        expect(must(more!).value).toBeGreaterThanOrEqual(must(less!).value)
      },
    ),
  )
})

test('Pennsylvania’s pieces join without a step; North Carolina’s do not, and stand as printed', () => {
  const at = (place: string, on: string, gpd: number) =>
    must(requiredCapacity(rule(place, on), { bedrooms: 6, flowGpd: gpd })).value
  for (const joint of [500, 5000, 7500, 10_000])
    expect(at('pennsylvania', '2005-01-01', joint + 1e-7)).toBeCloseTo(
      at('pennsylvania', '2005-01-01', joint),
      5,
    )
  expect(
    at('north-carolina', '2024-06-01', 1500) - at('north-carolina', '2024-06-01', 1500 - 1e-9),
  ).toBeCloseTo(-5, 6)
  expect(
    at('north-carolina', '2024-06-01', 600 + 1e-9) - at('north-carolina', '2024-06-01', 600),
  ).toBeCloseTo(2, 6)
})
