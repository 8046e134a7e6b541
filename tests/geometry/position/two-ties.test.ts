import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { covariance, drms } from '../../../src/geometry/position/point.ts'
import { positionFromTwoTies } from '../../../src/geometry/position/two-ties.ts'
import { exact, standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'
import oracle from '../../oracles/two-tie-position/drms.json' with { type: 'json' }
import { normal } from './normal.ts'

const fix = (a: number, b: number, c: number, u = 0.5, uc = 0) =>
  must(positionFromTwoTies(uncertain(a, u, 'tie a'), uncertain(b, u, 'tie b'), uncertain(c, uc, 'baseline')))
    .value

describe(oracle.source, () => {
  test.each(oracle.cases)('$name', ({ a, b, baseline, gammaDeg, drmsFt }) => {
    const it = fix(a, b, baseline, oracle.sigmaFt)
    expect(Math.abs(it.sightAngleDeg - gammaDeg)).toBeLessThanOrEqual(oracle.tolerance.gammaDeg + 1e-9)
    expect(Math.abs(it.drmsFt - drmsFt)).toBeLessThanOrEqual(oracle.tolerance.drmsFt + 1e-9)
    expect(it.geometry).toBe('weak')
    // Independent of the coordinates: the law of cosines on the three lengths, then the formula as it stands.
    const gamma = Math.acos((a * a + b * b - baseline * baseline) / (2 * a * b))
    expect(it.sightAngleDeg).toBeCloseTo((gamma * 180) / Math.PI, 9)
    expect(it.drmsFt).toBeCloseTo((oracle.sigmaFt * Math.SQRT2) / Math.sin(gamma), 9)
  })
})

test('a 3-4-5 triangle: 40 ft from A along, 30 ft off', () => {
  const it = fix(50, Math.hypot(40 - 60, 30), 60)
  expect(it.away.x.value).toBeCloseTo(40, 10)
  expect(it.away.y.value).toBeCloseTo(30, 10)
  expect(it.toward.y.value).toBeCloseTo(-30, 10)
  expect(it.geometry).toBe('sound')
})

/** Places off the line at least a few ft, seen from a baseline of house size. */
const place = fc.record({
  x: fc.double({ min: -150, max: 200, noNaN: true }),
  y: fc.double({ min: 5, max: 200, noNaN: true }),
  c: fc.double({ min: 10, max: 80, noNaN: true }),
})

test('the ties measured back from either root are the ties put in', () => {
  fc.assert(
    fc.property(place, ({ x, y, c }) => {
      const [a, b] = [Math.hypot(x, y), Math.hypot(x - c, y)]
      const it = must(positionFromTwoTies(exact(a), exact(b), exact(c))).value
      for (const root of [it.away, it.toward]) {
        expect(Math.hypot(root.x.value, root.y.value)).toBeCloseTo(a, 7)
        expect(Math.hypot(root.x.value - c, root.y.value)).toBeCloseTo(b, 7)
      }
      expect(it.away.x.value).toBeCloseTo(x, 5)
      expect(it.away.y.value).toBeCloseTo(y, 5)
    }),
  )
})

test('seen from the other side the corners swap and the place is mirrored', () => {
  fc.assert(
    fc.property(place, ({ x, y, c }) => {
      const [a, b] = [Math.hypot(x, y), Math.hypot(x - c, y)]
      const [one, other] = [fix(a, b, c), fix(b, a, c)]
      expect(other.away.x.value).toBeCloseTo(c - one.away.x.value, 6)
      expect(other.away.y.value).toBeCloseTo(one.away.y.value, 5)
      expect(other.drmsFt).toBeCloseTo(one.drmsFt, 6)
    }),
  )
})

test('for equal independent ties and a known baseline DRMS is σ√2/|sin γ|', () => {
  fc.assert(
    fc.property(place, ({ x, y, c }) => {
      const it = fix(Math.hypot(x, y), Math.hypot(x - c, y), c, 0.05)
      fc.pre(it.geometry !== 'flat')
      const expected = (0.05 * Math.SQRT2) / Math.sin((it.sightAngleDeg * Math.PI) / 180)
      expect(it.drmsFt / expected).toBeCloseTo(1, 6)
    }),
  )
})

test('agrees with a Monte Carlo run through the exact formula (JCGM 101:2008), baseline error included', () => {
  const [a, b, c, u, uc] = [60, 70, 40, 0.25, 0.1]
  const draw = normal(20240611)
  const [xs, ys]: [number[], number[]] = [[], []]
  for (let i = 0; i < 200_000; i++) {
    const [ta, tb, tc] = [a + u * draw(), b + u * draw(), c + uc * draw()]
    const x = (ta * ta - tb * tb + tc * tc) / (2 * tc)
    xs.push(x)
    ys.push(Math.sqrt(ta * ta - x * x))
  }
  const it = must(
    positionFromTwoTies(uncertain(a, u, 'tie a'), uncertain(b, u, 'tie b'), uncertain(c, uc, 'baseline')),
  ).value
  const mean = (list: number[]) => list.reduce((sum, v) => sum + v, 0) / list.length
  const [mx, my] = [mean(xs), mean(ys)]
  const cov = (p: number[], q: number[], mp: number, mq: number) =>
    p.reduce((sum, v, i) => sum + (v - mp) * (q[i]! - mq), 0) / (p.length - 1)
  const expected = covariance(it.away)
  // 200,000 trials: a variance is good to about √(2/N) = 0.3 %; 2 % leaves room for the terms beyond first order.
  expect(cov(xs, xs, mx, mx) / expected.xx).toBeCloseTo(1, 1)
  expect(Math.abs(cov(xs, xs, mx, mx) / expected.xx - 1)).toBeLessThan(0.02)
  expect(Math.abs(cov(ys, ys, my, my) / expected.yy - 1)).toBeLessThan(0.02)
  expect(Math.abs(cov(xs, ys, mx, my) / expected.xy - 1)).toBeLessThan(0.02)
})

test('one tape for both ties is one cause: its error moves the place along the sight lines', () => {
  const shared = must(
    positionFromTwoTies(uncertain(50, 0.1, 'tape'), uncertain(50, 0.1, 'tape'), exact(60)),
  ).value
  // Both ties long by the same amount: x stays, y grows by a/y per ft.
  expect(standardUncertainty(shared.away.x)).toBe(0)
  expect(standardUncertainty(shared.away.y)).toBeCloseTo((0.1 * 50) / 40, 12)
})

describe('ties that do not meet', () => {
  const refused = (a: number, b: number, c: number, u = 0.02) => {
    const it = positionFromTwoTies(uncertain(a, u, 'tie a'), uncertain(b, u, 'tie b'), exact(c))
    if (it.ok) throw new Error('expected the ties to miss each other')
    return it.error
  }

  test('too different for the baseline: by how much, and what baseline they would need', () => {
    const it = refused(30, 45, 12)
    expect(it.kind).toBe('ties-too-different')
    expect(it.gapFt).toBeCloseTo(3, 12)
    expect(it.says).toContain('at least 15.0 ft')
  })

  test('too short to reach each other', () => {
    const it = refused(10, 12, 30)
    expect(it.kind).toBe('ties-too-short')
    expect(it.gapFt).toBeCloseTo(8, 12)
  })

  test('a tie in tenths that was meant in feet and inches is offered as a mend', () => {
    // 42.9 ft written for 42'-9" = 42.75 ft: with a 12.8 ft baseline and 30.0 ft the arcs then cross.
    const it = refused(30, 42.9, 12.8, 0.001)
    expect(it.fixes).toContainEqual(
      expect.objectContaining({ which: 'tie-b', ft: 42.75, says: `the tie from B: 42.9 read as 42'-9"` }),
    )
  })

  test('a miss within the expanded uncertainty touches instead', () => {
    const it = positionFromTwoTies(uncertain(30, 0.5, 'tie a'), uncertain(43, 0.5, 'tie b'), exact(12.5))
    expect(must(it).value).toMatchObject({ geometry: 'flat', away: { y: { value: 0 } } })
    expect(standardUncertainty(must(it).value.away.y)).toBeGreaterThan(3)
  })
})

test('a place on the wall’s own line is flat, its two roots one, and its width finite', () => {
  const it = fix(20, 20, 40)
  expect(it.geometry).toBe('flat')
  expect(it.away.y.value).toBe(0)
  expect(Number.isFinite(drms(covariance(it.away)))).toBe(true)
})

test('the working can be redone by hand', () => {
  const { steps } = must(positionFromTwoTies(uncertain(50, 0.5, 'a'), uncertain(50, 0.5, 'b'), exact(60)))
  expect(steps.map((step) => step.numbers)).toEqual([
    '(50² − 50² + 60²) / (2 × 60)',
    '√(0.41667² + 0.41667²)',
    '±√(50² − 30²)',
    '√(0.3125² + 0.3125²)',
    'x = 30, y = 40, c = 60',
    expect.stringMatching(/^√\(0\.\d+² \+ 0\.\d+²\)$/),
  ])
  expect(steps[0]!.result).toMatch(/^30 ft/)
  expect(steps[2]!.result).toMatch(/^±40 ft/)
})
