import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { bodyOf } from '../../../src/geometry/volume/body-of.ts'
import { gallonsPerInch, tankCapacity } from '../../../src/geometry/volume/tank-capacity.ts'
import type { TankShape } from '../../../src/geometry/volume/tank-shape.ts'
import { propagateNumerically } from '../../../src/measure/propagate-numerically.ts'
import { exact, standardUncertainty, type Uncertain, uncertain } from '../../../src/measure/uncertain.ts'
import { looseness, monteCarlo } from '../../measure/monte-carlo.ts'
import { redo, resultOf } from '../../measure/redo-step.ts'
import cylinder from '../../oracles/horizontal-cylinder/fractions.json' with { type: 'json' }
import virginia from '../../oracles/virginia-12vac5-610-815/table-5-3.json' with { type: 'json' }
import published from '../../oracles/worked-tank-examples/published.json' with { type: 'json' }
import { cases, noError, taped } from './shapes.ts'

const GAL_PER_CU_FT = 1728 / 231
const gal = (shape: TankShape): number => must(tankCapacity(shape)).value.value

describe('published examples', () => {
  test.each(virginia.cases)(`${virginia.source}: nominal $nominalGal gal`, (it) => {
    const shape: TankShape = {
      kind: 'rectangular',
      length: exact(it.length),
      width: exact(it.width),
      liquidDepth: exact(it.depth),
    }
    expect(Math.abs(gal(shape) - it.computedGal)).toBeLessThanOrEqual(virginia.tolerance.gal)
    const over = (gal(shape) / it.nominalGal - 1) * 100
    expect(Math.abs(over - it.percentOverNominal)).toBeLessThanOrEqual(virginia.tolerance.percent)
  })

  test.each(published.cases)(`${published.source}: $name`, (it) => {
    const { kind, depth } = it.shape
    const shape: TankShape =
      kind === 'rectangular'
        ? {
            kind,
            length: exact(it.shape.length!),
            width: exact(it.shape.width!),
            liquidDepth: exact(depth),
          }
        : { kind: 'vertical-cylinder', diameter: exact(it.shape.diameter!), liquidDepth: exact(depth) }
    expect(Math.abs(gal(shape) - it.gal.value)).toBeLessThanOrEqual(it.gal.tolerance)
    const cuFt = gal(shape) / GAL_PER_CU_FT
    for (const said of it.published)
      expect(Math.abs(cuFt * said.galPerCuFt - said.value)).toBeLessThanOrEqual(said.tolerance)
    if (it.galPerInch) {
      const perInch = must(gallonsPerInch(shape)).value.value
      const atTheirs = (perInch / GAL_PER_CU_FT) * it.galPerInch.galPerCuFt
      expect(Math.abs(atTheirs - it.galPerInch.value)).toBeLessThanOrEqual(it.galPerInch.tolerance)
    }
  })

  const lying = (d: number, length: number, h: number): TankShape => ({
    kind: 'horizontal-cylinder',
    diameter: exact(d),
    length: exact(length),
    liquidDepth: exact(h),
  })
  const shareAt = (h: number): number => gal(lying(1, 1, h)) / gal(lying(1, 1, 1))

  test.each(Object.entries(cylinder.sixDecimals))(`${cylinder.source}: h/d %s, six decimals`, (h, share) => {
    expect(Math.abs(shareAt(Number(h)) - share)).toBeLessThanOrEqual(cylinder.tolerance.six)
  })
  test.each(Object.entries(cylinder.fourDecimals))(
    `${cylinder.source}: h/d %s, four decimals`,
    (h, share) => {
      expect(Math.abs(shareAt(Number(h)) - share)).toBeLessThanOrEqual(cylinder.tolerance.four + 1e-12)
    },
  )
  test.each(cylinder.metric)('lying cylinder: $name', ({ d, length, h, cubic, full, tolerance }) => {
    // The formula knows no unit: meters in, cubic meters out.
    expect(Math.abs(gal(lying(d, length, h)) / GAL_PER_CU_FT - cubic)).toBeLessThanOrEqual(tolerance)
    expect(Math.abs(gal(lying(d, length, d)) / GAL_PER_CU_FT - full)).toBeLessThanOrEqual(
      Math.max(tolerance, 1),
    )
  })
})

describe.each(Object.keys(cases(noError)))('%s', (name) => {
  const plain = cases(noError)[name]!
  const withTape = cases(taped)[name]!

  test('is what its definition integrates to', () => {
    fc.assert(
      fc.property(plain, ({ shape, cuFt }) => {
        // Both sides carry rounding only; the dish's formula takes near-equal cubes apart in a shallow head.
        expect(Math.abs(gal(shape) / (cuFt * GAL_PER_CU_FT) - 1)).toBeLessThan(1e-9)
      }),
      { numRuns: 60 },
    )
  })

  test('slopes written out are the slopes by central differences', () => {
    fc.assert(
      fc.property(withTape, ({ shape }) => {
        const body = must(bodyOf(shape))
        const scaleOf = body.inputs.map((input) => body.cuFt / Math.max(input.value, 0.1))
        const at = body.inputs.map((input) => input.value)
        for (const [i, slope] of body.slopes.slice(0, body.inputs.length).entries()) {
          if (nearACorner(shape)) continue
          const step = 1e-5 * Math.max(at[i]!, 0.1)
          const numeric =
            (body.volumeAt(at.with(i, at[i]! + step)) - body.volumeAt(at.with(i, at[i]! - step))) / (2 * step)
          expect(Math.abs(slope - numeric)).toBeLessThan(2e-4 * scaleOf[i]!)
        }
      }),
      { numRuns: 60 },
    )
  })

  test('uncertainty agrees with propagation of distributions (JCGM 101:2008)', () => {
    // Three shapes each, seeded: a tank as it is met, all dimensions off by one tape and by their own readings.
    const picked = fc
      .sample(withTape, { seed: 101, numRuns: 200 })
      .filter(({ shape }) => !nearACorner(shape, 0.2))
    expect(picked.length).toBeGreaterThanOrEqual(3)
    for (const { shape } of picked.slice(0, 3)) {
      const body = must(bodyOf(shape))
      const drawn = monteCarlo((values) => body.volumeAt(values) * GAL_PER_CU_FT, body.inputs)
      const capacity = must(tankCapacity(shape)).value
      const ratio = standardUncertainty(capacity) / drawn.standardDeviation
      expect(Math.abs(ratio - 1)).toBeLessThan(looseness())
      expect(Math.abs(drawn.mean / capacity.value - 1)).toBeLessThan(5e-3)
      const perInch = must(gallonsPerInch(shape)).value
      const surfaces = monteCarlo((values) => (body.surfaceAt(values) * GAL_PER_CU_FT) / 12, body.inputs)
      expect(Math.abs(standardUncertainty(perInch) / surfaces.standardDeviation - 1)).toBeLessThan(
        looseness(),
      )
    }
  })

  test('grows with the liquid depth, by the gallons per inch', () => {
    fc.assert(
      fc.property(plain, ({ shape }) => {
        const body = must(bodyOf(shape))
        const at = body.inputs.map((input) => input.value)
        const depths = depthIndices(shape)
        const nudged = (by: number) => at.map((value, i) => (depths.includes(i) ? value * by : value))
        expect(body.volumeAt(nudged(0.99))).toBeLessThan(body.cuFt)
        const perInch = must(gallonsPerInch(shape)).value.value
        expect(perInch).toBeGreaterThanOrEqual(0)
        if (depths.length > 1 || isTapered(shape) || nearACorner(shape)) return
        // ∂V/∂h is the surface: the mean-value theorem over a small drop of level.
        const h = at[depths[0]!]!
        const drop = 1e-4 * h
        const lost = body.cuFt - body.volumeAt(at.with(depths[0]!, h - drop))
        const middle = body.surfaceAt(at.with(depths[0]!, h - drop / 2))
        expect(Math.abs(lost / drop - middle)).toBeLessThan(2e-3 * Math.max(middle, body.cuFt / h / 10))
      }),
      { numRuns: 60 },
    )
  })

  test('scales with the cube of its size, whatever the unit', () => {
    fc.assert(
      fc.property(plain, fc.double({ min: 0.3048, max: 3.28, noNaN: true }), ({ shape }, k) => {
        const body = must(bodyOf(shape))
        const scaled = body.volumeAt(body.inputs.map((input) => input.value * k))
        expect(Math.abs(scaled / (body.cuFt * k ** 3) - 1)).toBeLessThan(1e-8)
      }),
      { numRuns: 60 },
    )
  })

  test('every step redone by its printed numbers gives its printed result', () => {
    fc.assert(
      fc.property(withTape, ({ shape }) => {
        // A dish within a millionth of a half ball: its printed numbers say a whole one.
        const ends = shape.kind === 'horizontal-cylinder' ? shape.ends : undefined
        if (shape.kind === 'horizontal-cylinder' && ends?.kind === 'spherical-segment')
          fc.pre(Math.abs(ends.rise.value / (shape.diameter.value / 2) - 1) > 1e-6)
        const { steps } = must(tankCapacity(shape))
        const size = Math.max(...must(bodyOf(shape)).inputs.map((input) => input.value))
        for (const step of steps) {
          if (step.result.includes('of the variance')) {
            // A share to two digits, of shifts to three; of the smallest the last of twelve decimals is all there is.
            expect(Math.abs(redo(step) - resultOf(step))).toBeLessThan(0.08 * resultOf(step) + 0.01)
            continue
          }
          if (step.says.startsWith('Expanded')) {
            const margin = Number(/± ([\d,.]+)/.exec(step.result)![1]!.replaceAll(',', ''))
            expect(Math.abs(redo(step) / margin - 1)).toBeLessThan(0.06)
            continue
          }
          const round = step.formula === 'V × 7.5' ? 0.51 : 0
          // A shallow dish is a small difference of large cubes: of twelve digits in, so much is sure to come out.
          const small =
            step.says.includes('one head') || step.says.includes('dished heads') ? 1e-6 * size ** 3 : 0
          const bound = 1e-4 * Math.abs(resultOf(step)) + round + small
          expect(Math.abs(redo(step) - resultOf(step))).toBeLessThanOrEqual(bound)
        }
        expect(steps.some((step) => step.formula === 'gal = V × 1728 ÷ 231')).toBe(true)
      }),
      { numRuns: 40 },
    )
  })
})

/** A circle's rim, where the level meets the crown or the floor, has no slope to compare; nor a barrel just full. */
function nearACorner(shape: TankShape, margin = 0.02): boolean {
  const near = (h: Uncertain, top: Uncertain) =>
    h.value / top.value > 1 - margin || h.value / top.value < margin
  switch (shape.kind) {
    case 'horizontal-cylinder':
      return (
        near(shape.liquidDepth, shape.diameter) ||
        (shape.ends?.kind === 'spherical-segment' &&
          shape.ends.rise.value / shape.diameter.value > (1 - margin) / 2)
      )
    case 'sphere':
      return near(shape.liquidDepth, shape.diameter)
    case 'horizontal-oval': {
      const joint = shape.width.value / 2
      const kinks = [joint, shape.height.value - joint, shape.height.value, 0]
      return (
        kinks.some((y) => Math.abs(shape.liquidDepth.value - y) < margin * shape.height.value) ||
        Math.abs(shape.width.value / shape.height.value - 1) < margin
      )
    }
    case 'horizontal-ellipse':
      return near(shape.liquidDepth, shape.height)
    case 'in-series':
      return shape.tanks.some((tank) => nearACorner(tank, margin))
    case 'two-compartments':
      return nearACorner(shape.first, margin) || nearACorner(shape.second, margin)
    default:
      return false
  }
}

/** Where among a body's inputs its liquid depths stand. */
function depthIndices(shape: TankShape): readonly number[] {
  const inputs = must(bodyOf(shape)).inputs
  const depths = (s: TankShape): readonly Uncertain[] =>
    s.kind === 'in-series'
      ? s.tanks.flatMap(depths)
      : s.kind === 'two-compartments'
        ? [...depths(s.first), ...depths(s.second)]
        : [s.liquidDepth]
  const wanted = depths(shape)
  return inputs.flatMap((input, i) => (wanted.includes(input) ? [i] : []))
}

/** Where the walls slope, the given plan is the liquid line's, and a lower level has another plan. */
const isTapered = (shape: TankShape): boolean =>
  (shape.kind === 'rectangular' && (shape.floorLength !== undefined || shape.floorWidth !== undefined)) ||
  (shape.kind === 'vertical-cylinder' && shape.floorDiameter !== undefined)

describe('symmetry', () => {
  const whole: { readonly [name: string]: (h: number) => TankShape } = {
    'lying cylinder': (h) => ({
      kind: 'horizontal-cylinder',
      diameter: exact(5),
      length: exact(9),
      liquidDepth: exact(5 * h),
      ends: { kind: 'spherical-segment', rise: exact(0.7) },
    }),
    'elliptical heads': (h) => ({
      kind: 'horizontal-cylinder',
      diameter: exact(5),
      length: exact(9),
      liquidDepth: exact(5 * h),
      ends: { kind: 'elliptical' },
    }),
    'wide oval': (h) => ({
      kind: 'horizontal-oval',
      width: exact(6),
      height: exact(4),
      length: exact(8),
      liquidDepth: exact(4 * h),
    }),
    'high oval': (h) => ({
      kind: 'horizontal-oval',
      width: exact(4),
      height: exact(6),
      length: exact(8),
      liquidDepth: exact(6 * h),
    }),
    ellipse: (h) => ({
      kind: 'horizontal-ellipse',
      width: exact(6),
      height: exact(4),
      length: exact(8),
      liquidDepth: exact(4 * h),
    }),
    sphere: (h) => ({ kind: 'sphere', diameter: exact(6), liquidDepth: exact(6 * h) }),
  }
  test.each(Object.keys(whole))('%s: half the depth is half the volume, and any level its mirror', (name) => {
    const at = (h: number) => gal(whole[name]!(h))
    expect(at(0.5) / at(1)).toBeCloseTo(0.5, 12)
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), (h) => {
        expect(at(h) + at(1 - h)).toBeCloseTo(at(1), 7)
      }),
    )
  })

  test('limits: a dish of half a sphere, an oval with no flat and an even ellipse are what they must be', () => {
    const [d, L, h] = [exact(5), exact(8), exact(3.7)]
    const flat = gal({ kind: 'horizontal-cylinder', diameter: d, length: L, liquidDepth: h })
    const round = gal({
      kind: 'horizontal-cylinder',
      diameter: d,
      length: L,
      liquidDepth: h,
      ends: { kind: 'spherical-segment', rise: exact(2.5) },
    })
    const halves = gal({
      kind: 'horizontal-cylinder',
      diameter: d,
      length: L,
      liquidDepth: h,
      ends: { kind: 'elliptical', rise: exact(2.5) },
    })
    const sphere = gal({ kind: 'sphere', diameter: d, liquidDepth: h })
    expect(round).toBeCloseTo(flat + sphere, 8)
    expect(halves).toBeCloseTo(flat + sphere, 8)
    for (const kind of ['horizontal-oval', 'horizontal-ellipse'] as const)
      expect(gal({ kind, width: d, height: d, length: L, liquidDepth: h })).toBeCloseTo(flat, 8)
    expect(gal({ kind: 'vertical-oval', length: d, width: d, liquidDepth: h })).toBeCloseTo(
      gal({ kind: 'vertical-cylinder', diameter: d, liquidDepth: h }),
      8,
    )
  })
})

describe('what can’t be measured out is refused, every fault at once', () => {
  const issues = (shape: TankShape): readonly string[] => {
    const capacity = tankCapacity(shape)
    return capacity.ok ? [] : capacity.error.map(({ pointer, message }) => `${pointer} ${message}`)
  }
  test('nothing, less than nothing, not a number', () => {
    const said = issues({
      kind: 'rectangular',
      length: exact(0),
      width: exact(-4),
      liquidDepth: exact(Number.NaN),
      cornerRadius: exact(-1),
    })
    expect(said.map((line) => line.split(' ')[0])).toEqual([
      '/length',
      '/width',
      '/liquidDepth',
      '/cornerRadius',
    ])
    expect(said[0]).toBe('/length The inside length is 0 ft: it must be more than zero.')
  })
  test('deeper than the tank is high, but not within what the readings allow', () => {
    const tank = (depth: Uncertain, height: Uncertain): TankShape => ({
      kind: 'rectangular',
      length: exact(8),
      width: exact(4),
      liquidDepth: depth,
      insideHeight: height,
    })
    expect(issues(tank(exact(5.5), exact(5)))).toEqual([
      '/liquidDepth The liquid depth, 5\'-6", is more than the inside height, 5\'-0", ' +
        'by more than the measurements allow: measure both again.',
    ])
    expect(issues(tank(uncertain(5.03, 0.02, 'a'), uncertain(5, 0.02, 'b')))).toEqual([])
    expect(issues(tank(uncertain(5.1, 0.02, 'a'), uncertain(5, 0.02, 'b')))).toHaveLength(1)
  })
  test('a lying shape filled to a hair over its crown counts as full', () => {
    const at = (h: Uncertain) =>
      tankCapacity({ kind: 'sphere', diameter: uncertain(5, 0.02, 'd'), liquidDepth: h })
    expect(must(at(uncertain(5.02, 0.02, 'h'))).value.value).toBeCloseTo(
      ((Math.PI * 125) / 6) * GAL_PER_CU_FT,
      9,
    )
  })
  test('pointers reach into compartments and tanks', () => {
    const bad: TankShape = { kind: 'sphere', diameter: exact(4), liquidDepth: exact(9) }
    const good: TankShape = { kind: 'sphere', diameter: exact(4), liquidDepth: exact(3) }
    const nested: TankShape = {
      kind: 'in-series',
      tanks: [good, { kind: 'two-compartments', first: good, second: bad }],
    }
    expect(issues(nested).map((line) => line.split(' ')[0])).toEqual(['/tanks/1/second/liquidDepth'])
    expect(issues({ kind: 'in-series', tanks: [] })).toEqual(['/tanks There is no tank in the series.'])
  })
  test('lengths no tank has: too long would overflow, too short would vanish', () => {
    const box = (ft: number): TankShape => ({
      kind: 'rectangular',
      length: exact(ft),
      width: exact(4),
      liquidDepth: exact(4),
    })
    expect(issues(box(1e308))).toEqual([
      '/length The inside length is 1e+308 ft: it must be at most 10000 ft.',
    ])
    expect(issues(box(1e-320))).toHaveLength(1)
    expect(issues(box(Number.POSITIVE_INFINITY))).toHaveLength(1)
  })
  test('heads and corners that can’t be', () => {
    const dished = (rise: number): TankShape => ({
      kind: 'horizontal-cylinder',
      diameter: exact(5),
      length: exact(8),
      liquidDepth: exact(4),
      ends: { kind: 'spherical-segment', rise: exact(rise) },
    })
    expect(issues(dished(2.6))).toHaveLength(1)
    expect(issues(dished(0.001))).toHaveLength(1)
    expect(issues(dished(0))).toHaveLength(1)
    const box = { kind: 'rectangular', length: exact(8), width: exact(4), liquidDepth: exact(4) } as const
    expect(issues({ ...box, cornerRadius: exact(2.1) })).toHaveLength(1)
    expect(
      issues({ kind: 'vertical-oval', length: exact(3), width: exact(4), liquidDepth: exact(4) }),
    ).toHaveLength(1)
  })
})

test('one tape over every side: its error enters three times and adds, where separate readings do not', () => {
  const tank = (cause: (name: string) => string): TankShape => ({
    kind: 'rectangular',
    length: uncertain(8, 0.02, cause('L')),
    width: uncertain(4, 0.02, cause('W')),
    liquidDepth: uncertain(4, 0.02, cause('D')),
  })
  const one = standardUncertainty(must(tankCapacity(tank(() => 'tape'))).value)
  const three = standardUncertainty(must(tankCapacity(tank((name) => name))).value)
  // By hand: slopes 16, 32, 32 sq ft at u = 0.02 ft: sum 1.6, root sum of squares 0.96 cu ft.
  expect(one).toBeCloseTo(1.6 * GAL_PER_CU_FT, 10)
  expect(three).toBeCloseTo(0.96 * GAL_PER_CU_FT, 10)
})

test('close under the crown a first-order u is low, and by how much', () => {
  // d 5 ft, readings of ±1/2 in. At 19/20 of the height the barrel is 98 % full and the surface narrows fast.
  const at = (share: number) => {
    const shape: TankShape = {
      kind: 'horizontal-cylinder',
      diameter: taped(5, 'd'),
      length: taped(8, 'L'),
      liquidDepth: taped(5 * share, 'D'),
    }
    const body = must(bodyOf(shape))
    const drawn = monteCarlo((values) => body.volumeAt(values) * GAL_PER_CU_FT, body.inputs)
    return standardUncertainty(must(tankCapacity(shape)).value) / drawn.standardDeviation
  }
  expect(Math.abs(at(0.8) - 1)).toBeLessThan(looseness())
  expect(Math.abs(at(0.95) - 1)).toBeLessThan(0.02)
  expect(at(1)).toBeGreaterThan(0.9)
})

test('analytic propagation is propagation by central differences', () => {
  const shape: TankShape = {
    kind: 'horizontal-cylinder',
    diameter: taped(5, 'd'),
    length: taped(8, 'L'),
    liquidDepth: taped(3.9, 'D'),
    ends: { kind: 'spherical-segment', rise: taped(0.8, 'c') },
  }
  const body = must(bodyOf(shape))
  const numeric = propagateNumerically(body.volumeAt, body.inputs)
  for (const [cause, shift] of must(tankCapacity(shape)).value.causes)
    expect(shift / GAL_PER_CU_FT).toBeCloseTo(numeric.causes.get(cause)!, 6)
})
