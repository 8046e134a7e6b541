import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import {
  rateFromTable,
  rateFromTexture,
  ryonRate,
} from '../../../src/geometry/absorption/application-rate.ts'
import { exact, standardUncertainty, type Uncertain, uncertain } from '../../../src/measure/uncertain.ts'
import { looseness, monteCarlo } from '../../measure/monte-carlo.ts'
import { redo, resultOf } from '../../measure/redo-step.ts'
import examples from '../../oracles/absorption-examples/published.json' with { type: 'json' }

const { ryon, ryonTable, phsPerBedroom, illinois, texas } = examples

describe('Ryon’s formula', () => {
  test(ryon.source, () => {
    const rate = ryonRate(exact(ryon.minPerIn))
    const length = ryon.gpd / rate.value.value / ryon.sqFtPerFt
    expect(Math.abs(length - ryon.lengthFt.value)).toBeLessThanOrEqual(ryon.lengthFt.tolerance)
    expect(Math.abs(Math.ceil(length) - ryon.publishedFt.value)).toBeLessThanOrEqual(
      ryon.publishedFt.tolerance,
    )
  })
  test.each(ryonTable.rows)(`${ryonTable.source}: %s min/in, %s gpd/sq ft`, (t, rate) => {
    expect(Math.abs(ryonRate(exact(t!)).value.value - rate!)).toBeLessThanOrEqual(ryonTable.tolerance.value)
  })
  test('at 45 min/in the printed rate is not the formula’s: both stand', () => {
    const { minPerIn, printed, formula } = ryonTable.disagrees
    const ours = ryonRate(exact(minPerIn)).value.value
    expect(Math.abs(ours - formula)).toBeLessThan(0.0005)
    expect(Math.abs(ours - printed)).toBeGreaterThan(0.05)
  })
  test('its uncertainty by draws, and its step by calculator', () => {
    const t = uncertain(30, 1, 'perc test')
    const rate = ryonRate(t)
    const drawn = monteCarlo(([x = 0]) => 5 / Math.sqrt(x), [t])
    expect(Math.abs(standardUncertainty(rate.value) / drawn.standardDeviation - 1)).toBeLessThan(looseness())
    expect(redo(rate.steps[0]!) / resultOf(rate.steps[0]!)).toBeCloseTo(1, 5)
  })
})

describe(phsPerBedroom.source, () => {
  const table = {
    table: 'percolation table',
    rows: phsPerBedroom.rows.map(([upTo, sqFt]) => ({
      upTo: upTo!,
      gpdPerSqFt: null,
      sqFtPerBedroom: sqFt!,
    })),
  }
  const at = (t: Uncertain) => must(rateFromTable(table, t)).value
  test.each(phsPerBedroom.rows)('%s min/in: %s sq ft per bedroom', (t, sqFt) => {
    expect(at(exact(t!)).row.sqFtPerBedroom).toBe(sqFt)
  })
  test('between two rows the slower governs; past the last there is none', () => {
    expect(at(exact(5.01)).row.sqFtPerBedroom).toBe(165)
    expect(at(exact(0.5)).row.sqFtPerBedroom).toBe(100)
    expect(rateFromTable(table, exact(60.1)).ok).toBe(false)
    expect(rateFromTable(table, exact(0)).ok).toBe(false)
  })
  test('a rate near a boundary names every row it may belong to', () => {
    expect(at(uncertain(14.9, 0.2, 'perc')).couldBe.map(({ upTo }) => upTo)).toEqual([15, 30])
    expect(at(uncertain(14, 0.2, 'perc')).couldBe.map(({ upTo }) => upTo)).toEqual([15])
    expect(at(uncertain(59.9, 1, 'perc')).slowerThanTable).toBe(true)
    expect(at(uncertain(50, 1, 'perc')).slowerThanTable).toBe(false)
  })
})

test.each(illinois.rows)(`${illinois.source}: to %s min, %s sq ft, %s gpd/sq ft`, (_, sqFt, rate) => {
  // Both columns come from one flow per bedroom.
  const { value, tolerance } = illinois.perBedroomGpd
  expect(Math.abs((sqFt! * rate!) / value - 1)).toBeLessThanOrEqual(tolerance)
})

describe(texas.source, () => {
  const table = {
    table: texas.source,
    rows: texas.rows.map(([soil, rate]) => ({ soil: String(soil), gpdPerSqFt: Number(rate) })),
  }
  test.each(texas.rows)('class %s: %s gpd/sq ft', (soil, rate) => {
    expect(must(rateFromTexture(table, String(soil).toLowerCase())).value).toBe(rate)
  })
  test('a soil it does not have is refused with the ones it has', () => {
    const answer = rateFromTexture(table, 'peat')
    expect(answer.ok ? '' : answer.error).toContain('it has Ib, II, III, IV')
  })
})
