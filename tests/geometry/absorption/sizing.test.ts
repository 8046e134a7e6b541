import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import {
  rateFromTable,
  rateFromTexture,
  ryonRate,
} from '../../../src/geometry/absorption/application-rate.ts'
import { daysOfStorage, voidVolume } from '../../../src/geometry/absorption/days-of-storage.ts'
import {
  areaForBedrooms,
  areaForFlow,
  atPermitAndToday,
  lengthForArea,
  providedAgainstRequired,
} from '../../../src/geometry/absorption/required-area.ts'
import { layeredWall, type SoilLayer } from '../../../src/geometry/absorption/soil-layers.ts'
import { exact, standardUncertainty, type Uncertain, uncertain } from '../../../src/measure/uncertain.ts'
import { looseness, monteCarlo } from '../../measure/monte-carlo.ts'
import { redo, resultOf } from '../../measure/redo-step.ts'
import examples from '../../oracles/absorption-examples/published.json' with { type: 'json' }
import lesson from '../../oracles/worked-tank-examples/solids-share.json' with { type: 'json' }

const { ryon, ryonTable, phsPerBedroom, illinois, texas, bed, areaFromPerc, sizingForms, pitStorage } =
  examples

describe('Ryon’s formula', () => {
  test(ryon.source, () => {
    const rate = ryonRate(exact(ryon.minPerIn))
    const area = areaForFlow(exact(ryon.gpd), rate.value)
    const length = lengthForArea(area.value, exact(ryon.sqFtPerFt)).value.value
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
    expect(areaForBedrooms(3, sqFt!).value).toBe(3 * sqFt!)
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
  // Both columns come from one flow per bedroom; a bed takes half as much again.
  const { value, tolerance } = illinois.perBedroomGpd
  expect(Math.abs((sqFt! * rate!) / value - 1)).toBeLessThanOrEqual(tolerance)
  const area = areaForFlow(exact(value), exact(rate!), illinois.bedFactor).value.value
  expect(Math.abs(area / (sqFt! * illinois.bedFactor) - 1)).toBeLessThanOrEqual(tolerance)
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

test(areaFromPerc.source, () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 750, max: 7500 }),
      fc.double({ min: 1, max: 120, noNaN: true }),
      (gpd, t) => {
        const whole = areaForFlow(exact(gpd), ryonRate(exact(t), areaFromPerc.divisor).value).value.value
        expect(whole / ((gpd * Math.sqrt(t)) / areaFromPerc.divisor)).toBeCloseTo(1, 12)
        for (const pct of areaFromPerc.reductionPct) {
          const less = areaForFlow(exact(gpd), ryonRate(exact(t)).value, 1 - pct / 100).value.value
          expect(less / whole).toBeCloseTo(1 - pct / 100, 12)
        }
      },
    ),
  )
})

test.each(sizingForms.cases)(
  `${sizingForms.source}: $gpd gpd × $sqFtPerGpd × $factor`,
  ({ gpd, sqFtPerGpd, factor, sqFt, widthFt, lengthFt }) => {
    const area = areaForFlow(exact(gpd), exact(1 / sqFtPerGpd), factor).value
    expect(Math.abs(area.value - sqFt)).toBeLessThanOrEqual(sizingForms.tolerance.value)
    if (widthFt === undefined || lengthFt === undefined) return
    const length = lengthForArea(area, exact(widthFt)).value.value
    expect(Math.abs(length - lengthFt)).toBeLessThanOrEqual(sizingForms.tolerance.value)
  },
)

test(pitStorage.source, () => {
  const { diameterIn, depthFt, porosity, gal } = pitStorage
  const bottom = (Math.PI * (diameterIn / 12) ** 2) / 4
  const stored = must(voidVolume(exact(bottom), exact(depthFt), exact(porosity))).value.value
  expect(Math.abs(stored - gal.value)).toBeLessThanOrEqual(gal.tolerance)
})

test(bed.source, () => {
  const area = areaForFlow(exact(bed.gpd), exact(bed.rate))
  expect(area.value.value).toBeCloseTo(bed.sqFt, 9)
  expect(redo(area.steps[0]!)).toBeCloseTo(bed.sqFt, 9)
})

describe('a pit through several soils (EPA 625/1-80-012 p. 236)', () => {
  const layer = (name: string, ft: number, mpi: number): SoilLayer => ({
    name,
    thickness: uncertain(ft, 0.1, `${name} thickness`),
    minPerIn: uncertain(mpi, 1, `${name} perc`),
  })
  const layers = [layer('sandy loam', 4, 10), layer('clay', 3, 60), layer('silt loam', 6, 25)]
  test('slow layers are left out and the rest weighted by thickness, by hand: (4·10 + 6·25) ÷ 10 = 19', () => {
    const { value, steps } = must(layeredWall(layers))
    expect(value.effectiveDepth.value).toBe(10)
    expect(value.minPerIn.value).toBeCloseTo(19, 12)
    expect(value.excluded.map(({ name }) => name)).toEqual(['clay'])
    for (const step of steps) expect(redo(step)).toBeCloseTo(resultOf(step), 4)
  })
  test('exactly 30 min/in is still counted, and a rate near it is named', () => {
    expect(must(layeredWall([layer('a', 4, 30), layer('b', 2, 5)])).value.effectiveDepth.value).toBe(6)
    expect(
      must(layeredWall([layer('a', 4, 31), layer('b', 2, 5)])).value.nearLimit.map(({ name }) => name),
    ).toEqual(['a'])
    expect(must(layeredWall(layers)).value.nearLimit).toEqual([])
    expect(must(layeredWall(layers, 60)).value.effectiveDepth.value).toBe(13)
  })
  test('the mean lies between its layers, and its uncertainty is what draws give', () => {
    const [a, , c] = layers as [SoilLayer, SoilLayer, SoilLayer]
    const { minPerIn } = must(layeredWall(layers)).value
    const inputs = [a.thickness, a.minPerIn, c.thickness, c.minPerIn]
    const drawn = monteCarlo(([t = 0, p = 0, s = 0, q = 0]) => (t * p + s * q) / (t + s), inputs)
    expect(Math.abs(standardUncertainty(minPerIn) / drawn.standardDeviation - 1)).toBeLessThan(looseness())
    const ft = fc.double({ min: 0.5, max: 20, noNaN: true })
    const mpi = fc.double({ min: 1, max: 30, noNaN: true })
    fc.assert(
      fc.property(fc.array(fc.tuple(ft, mpi), { minLength: 1, maxLength: 5 }), (list) => {
        const mean = must(layeredWall(list.map(([t, p], i) => layer(`${i}`, t, p)))).value.minPerIn.value
        expect(mean).toBeGreaterThanOrEqual(Math.min(...list.map(([, p]) => p)) - 1e-9)
        expect(mean).toBeLessThanOrEqual(Math.max(...list.map(([, p]) => p)) + 1e-9)
      }),
    )
  })
  test('a pit all in clay has no wall, and faults carry their layer', () => {
    expect(layeredWall([layer('clay', 8, 90)]).ok).toBe(false)
    const bad = layeredWall([layer('a', 0, 10), layer('b', 2, -1)])
    expect(bad.ok ? [] : bad.error.map(({ pointer }) => pointer)).toEqual(['/0/thickness', '/1/minPerIn'])
  })
})

describe('provided against required', () => {
  const verdict = (provided: Uncertain, required: Uncertain) =>
    providedAgainstRequired(provided, required).value.verdict
  test('three answers', () => {
    expect(verdict(uncertain(700, 20, 'tape'), exact(600))).toBe('suffices')
    expect(verdict(uncertain(500, 20, 'tape'), exact(600))).toBe('falls-short')
    expect(verdict(uncertain(610, 20, 'tape'), exact(600))).toBe('too-close-to-call')
  })
  test('a cause in both counts once, with its sign', () => {
    expect(verdict(uncertain(610, 20, 'tape'), uncertain(600, 20, 'tape'))).toBe('suffices')
    expect(verdict(uncertain(610, 20, 'tape'), uncertain(600, 20, 'perc'))).toBe('too-close-to-call')
  })
  test('right for its day is not right for today', () => {
    const both = atPermitAndToday(uncertain(610, 4, 'tape'), { atPermit: exact(500), today: exact(750) })
    expect(both.atPermit.value.verdict).toBe('suffices')
    expect(both.today.value.verdict).toBe('falls-short')
    expect(redo(both.today.steps[0]!)).toBe(-140)
  })
})

describe(`days of storage: ${lesson.source}`, () => {
  test.each(lesson.storage.cases)('$gal gal, $gpd gpd: $days days', ({ gal, gpd, days, tolerance }) => {
    const { value, steps } = must(daysOfStorage(exact(gal), exact(gpd)))
    expect(Math.abs(value.value - days)).toBeLessThanOrEqual(tolerance)
    expect(redo(steps[0]!)).toBeCloseTo(value.value, 9)
  })
  test('no flow, no days', () => expect(daysOfStorage(exact(1000), exact(0)).ok).toBe(false))
  test('its uncertainty by draws', () => {
    const inputs = [uncertain(1000, 20, 'tank'), uncertain(450, 10, 'flow')]
    const { value } = must(daysOfStorage(inputs[0]!, inputs[1]!))
    const drawn = monteCarlo(([v = 0, q = 0]) => v / q, inputs)
    expect(Math.abs(standardUncertainty(value) / drawn.standardDeviation - 1)).toBeLessThan(looseness())
  })
})

test('the volume between stones, by hand: 600 × 1 × 0.35 cu ft', () => {
  const voids = must(voidVolume(exact(600), exact(1), exact(0.35)))
  expect(voids.value.value).toBeCloseTo((210 * 1728) / 231, 9)
  expect(redo(voids.steps[0]!)).toBeCloseTo(voids.value.value, 6)
  expect(voidVolume(exact(600), exact(1), exact(1.2)).ok).toBe(false)
})
