import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { applicationRate } from '../../../src/rules/apply/application-rate.ts'
import { percRow } from '../../../src/rules/apply/perc-row.ts'
import { type AbsorptionFacts, requiredAbsorption } from '../../../src/rules/apply/required-absorption.ts'
import { inForce } from '../../../src/rules/in-force.ts'
import perc from '../../oracles/absorption-rates/percolation.json' with { type: 'json' }
import roots from '../../oracles/absorption-rates/root-formulas.json' with { type: 'json' }
import ryon from '../../oracles/absorption-rates/ryon.json' with { type: 'json' }
import texas from '../../oracles/absorption-rates/texas.json' with { type: 'json' }
import { day } from '../day.ts'
import { SHIPPED } from '../shipped-book.ts'

const percRule = (place: string, on: string) => {
  const answer = inForce(SHIPPED, place, 'absorption.perc-table', day(on))
  if (answer.state !== 'in-force') throw new Error(`${place} on ${on}: ${answer.state}`)
  return answer
}
const textureRule = (place: string, on: string) => {
  const answer = inForce(SHIPPED, place, 'absorption.texture-table', day(on))
  if (answer.state !== 'in-force') throw new Error(`${place} on ${on}: ${answer.state}`)
  return answer
}
const facts = (some: Partial<AbsorptionFacts>): AbsorptionFacts => ({
  minutesPerInch: null,
  soil: null,
  bedrooms: null,
  flowGpd: null,
  bed: false,
  ...some,
})

describe.each(perc.cases)('$source', (it) => {
  const rule = percRule(it.place, it.on)

  test.each((it.sqFtPerBedroomByMpi ?? []) as [number, number][])(
    '%f min/in: %d sq ft per bedroom',
    (mpi, area) => {
      expect(must(percRow(rule, mpi)).value.sqFtPerBedroom).toBe(area)
    },
  )
  test.each((it.gpdPerSqFtByMpi ?? []) as [number, number][])('%f min/in: %f gpd/sq ft', (mpi, rate) => {
    expect(must(applicationRate(rule, { minutesPerInch: mpi, soil: null })).value).toBe(rate)
  })
  test.each((it.between ?? []) as [number, number][])(
    'between rows the slower governs: %f min/in',
    (mpi, area) => {
      expect(must(percRow(rule, mpi)).value.sqFtPerBedroom).toBe(area)
    },
  )
  test.each(it.unsuitableMpi ?? [])('%f min/in is unsuitable', (mpi) => {
    expect(percRow(rule, mpi)).toMatchObject({ ok: false, error: { reason: 'unsuitable' } })
  })
})

describe.each(roots.cases)('$source', ({ place, on, areas, beyond }) => {
  const rule = percRule(place, on)
  test.each(areas as { gpd: number; mpi: number; sqFt: number; bed?: boolean; gravelIn?: number }[])(
    '$gpd gpd at $mpi min/in: $sqFt sq ft',
    ({ gpd, mpi, sqFt, ...more }) => {
      const it = must(requiredAbsorption(rule, facts({ minutesPerInch: mpi, flowGpd: gpd, ...more })))
      expect(Math.abs(it.value.sqFt - sqFt)).toBeLessThanOrEqual(roots.tolerance.sqFt)
    },
  )
  test.each(beyond as number[])('%d gpd is beyond the formula', (gpd) => {
    const it = requiredAbsorption(rule, facts({ minutesPerInch: 20, flowGpd: gpd, gravelIn: 6 }))
    expect(it).toMatchObject({ error: { reason: 'beyond-table' } })
  })
})

describe('what a table says of pits, of few bedrooms and of gravel', () => {
  test('New Jersey’s table is for pits, and never asks for less than 110 sq ft', () => {
    const rule = percRule('new-jersey', '2024-11-04')
    const ask = (bedrooms: number, pit: boolean) =>
      requiredAbsorption(rule, facts({ minutesPerInch: 10, bedrooms, pit }))
    expect(ask(1, false)).toMatchObject({ error: { reason: 'pits-only' } })
    expect(must(ask(1, true)).value).toMatchObject({ sqFt: 110, counts: 'sidewall' })
    expect(must(ask(1, true)).steps.at(-1)).toMatchObject({ numbers: 'max(110, 72)' })
    expect(must(ask(2, true)).value.sqFt).toBe(144)
  })

  test('the Public Health Service calls ground slower than 30 minutes unsuitable for pits, not for trenches', () => {
    const rule = percRule('public-health-service', '1970-01-01')
    const ask = (minutesPerInch: number, pit: boolean) =>
      requiredAbsorption(rule, facts({ minutesPerInch, bedrooms: 3, pit }))
    expect(must(ask(30, true)).value.sqFt).toBe(750)
    expect(ask(30.1, true)).toMatchObject({ error: { reason: 'unsuitable' } })
    expect(must(ask(30.1, false)).value.sqFt).toBe(900)
  })

  test('its area is for two bedrooms at least', () => {
    const it = must(
      requiredAbsorption(
        percRule('public-health-service', '1970-01-01'),
        facts({ minutesPerInch: 10, bedrooms: 1 }),
      ),
    )
    expect(it.value.sqFt).toBe(330)
    expect(it.steps.at(-1)).toMatchObject({
      formula: 'A = area per bedroom · bedrooms, at least 2',
      numbers: '165 × 2',
    })
  })

  test('a table that gives credit for gravel says nothing until its depth is known', () => {
    const rule = percRule('south-dakota', '1990-01-01')
    const ask = (gravelIn: number | null) =>
      requiredAbsorption(rule, facts({ minutesPerInch: 36, flowGpd: 1000, gravelIn }))
    expect(ask(null)).toMatchObject({ error: { reason: 'needs-gravel-depth' } })
    expect(must(ask(24)).steps.at(-1)).toMatchObject({
      formula: 'A = Q / rate less 40 % for gravel',
      numbers: '1,000 / 0.833333 × 0.6',
      result: '720.0 sq ft',
    })
  })
})

test('a table that merely ends is not called unsuitable', () => {
  expect(percRow(percRule('missouri-pattern', '2000-01-01'), 121)).toMatchObject({
    error: { reason: 'beyond-table' },
  })
  expect(percRow(percRule('missouri-pattern', '2000-01-01'), 0.5)).toMatchObject({
    error: { reason: 'beyond-table' },
  })
})

test('a row for one soil is taken only for that soil', () => {
  const rule = percRule('minnesota', '2014-06-01')
  expect(must(percRow(rule, 3, 'Fine sand')).value.gpdPerSqFt).toBe(0.6)
  expect(must(percRow(rule, 3, 'coarse sand')).value.gpdPerSqFt).toBe(1.2)
  expect(must(percRow(rule, 10, 'fine sand')).value.gpdPerSqFt).toBe(0.78)
})

describe(texas.source, () => {
  const rule = textureRule('texas', '2010-01-01')
  test.each(Object.entries(texas.gpdPerSqFt))('class %s: %f gpd/sq ft', (soil, rate) => {
    expect(must(applicationRate(rule, { minutesPerInch: null, soil })).value).toBe(rate)
  })
  test.each(Object.entries(texas.moreThan))('class %s: more than %f gpd/sq ft', (soil, rate) => {
    const it = must(applicationRate(rule, { minutesPerInch: null, soil }))
    expect(it.value).toBe(rate)
    expect(it.steps[0]?.result).toBe(`more than ${rate} gpd/sq ft`)
  })
  test('a soil it does not know is refused with those it does', () => {
    const it = applicationRate(rule, { minutesPerInch: null, soil: 'loam' })
    expect(it).toMatchObject({
      error: { reason: 'no-such-soil', among: ['Ia', 'Ib', 'II', 'III', 'IV'] },
    })
  })
})

test(ryon.source, () => {
  const rule = percRule('ryon-formula', '2002-08-12')
  const it = must(requiredAbsorption(rule, facts({ minutesPerInch: ryon.mpi, flowGpd: ryon.gpd })))
  const length = it.value.sqFt / ryon.sqFtPerFt
  expect(length).toBeCloseTo(ryon.exactFt, 2)
  expect(Math.abs(length - ryon.publishedFt)).toBeLessThanOrEqual(ryon.tolerance.ft)
})

describe('area required', () => {
  test('by the bedrooms where the source counts by bedrooms', () => {
    const it = must(
      requiredAbsorption(
        percRule('public-health-service', '1970-01-01'),
        facts({ minutesPerInch: 10, bedrooms: 3 }),
      ),
    )
    expect(it.value).toMatchObject({ sqFt: 495, by: 'area-per-bedroom', other: null, counts: 'bottom' })
    expect(it.steps.at(-1)).toMatchObject({ numbers: '165 × 3', result: '495.0 sq ft' })
  })

  test('Illinois asks a bed for half as much again', () => {
    const ask = (bed: boolean) =>
      must(
        requiredAbsorption(
          percRule('illinois', '2000-01-01'),
          facts({ minutesPerInch: 20, bedrooms: 3, bed }),
        ),
      ).value.sqFt
    expect(ask(true)).toBe(705 * 1.5)
    expect(ask(false)).toBe(705)
  })

  test('where a source’s two columns disagree, both are told', () => {
    const rule = percRule('missouri-pattern', '2000-01-01')
    const it = must(requiredAbsorption(rule, facts({ minutesPerInch: 8, bedrooms: 3, flowGpd: 360 }))).value
    expect(it).toMatchObject({
      sqFt: 495,
      by: 'area-per-bedroom',
      other: { sqFt: 360, by: 'application-rate' },
    })
    expect(rule.entry.contradictions).toHaveLength(1)
  })

  test('what is missing is named', () => {
    const rule = percRule('public-health-service', '1970-01-01')
    expect(requiredAbsorption(rule, facts({ bedrooms: 3 }))).toMatchObject({
      error: { reason: 'needs-perc-rate' },
    })
    expect(requiredAbsorption(rule, facts({ minutesPerInch: 10 }))).toMatchObject({
      error: { reason: 'needs-bedrooms' },
    })
    const soils = textureRule('texas', '2010-01-01')
    expect(requiredAbsorption(soils, facts({ soil: 'II' }))).toMatchObject({
      error: { reason: 'needs-flow' },
    })
    expect(requiredAbsorption(soils, facts({ flowGpd: 300 }))).toMatchObject({
      error: { reason: 'needs-soil' },
    })
  })
})

test('slower ground never needs less, whatever the table', () => {
  const rules = perc.cases.map((it) => percRule(it.place, it.on))
  const rate = fc.double({ min: 0.05, max: 130, noNaN: true })
  fc.assert(
    fc.property(fc.constantFrom(...rules), rate, rate, (rule, s, t) => {
      const [fast, slow] = [Math.min(s, t), Math.max(s, t)].map((mpi) =>
        requiredAbsorption(rule, facts({ minutesPerInch: mpi, bedrooms: 3, flowGpd: 450 })),
      )
      fc.pre(fast!.ok && slow!.ok)
      expect(must(slow!).value.sqFt).toBeGreaterThanOrEqual(must(fast!).value.sqFt)
    }),
  )
})
