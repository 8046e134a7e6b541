import fc from 'fast-check'
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import type { CornerTie } from '../../../src/geometry/position/fit-ties.ts'
import { covariance, type Point } from '../../../src/geometry/position/point.ts'
import { positionFromTies } from '../../../src/geometry/position/ties.ts'
import { positionFromTwoTies } from '../../../src/geometry/position/two-ties.ts'
import { exact, standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'
import { normal } from './normal.ts'

const known = (x: number, y: number): Point => ({ x: exact(x), y: exact(y) })
const tie = (corner: string, at: Point, ft: number, u = 0.1): CornerTie => ({
  corner,
  at,
  tie: uncertain(ft, u, `tie ${corner}`),
})

/** A house: front wall from (0, 0) to (40, 0), body toward negative y. */
const HOUSE = { A: known(0, 0), B: known(40, 0), C: known(40, -28), D: known(0, -28) }
type Corner = keyof typeof HOUSE
const CORNERS = Object.keys(HOUSE) as Corner[]
const distance = (corner: Corner, x: number, y: number): number =>
  Math.hypot(x - HOUSE[corner].x.value, y - HOUSE[corner].y.value)
const tiesTo = (
  x: number,
  y: number,
  corners: readonly Corner[] = CORNERS,
  errors: Partial<Record<Corner, number>> = {},
) => corners.map((it) => tie(it, HOUSE[it], distance(it, x, y) + (errors[it] ?? 0)))

const somewhere = fc.record({
  x: fc.double({ min: -120, max: 160, noNaN: true }),
  y: fc.double({ min: 3, max: 180, noNaN: true }),
})

test('exact ties lead back to the place they were taken to', () => {
  fc.assert(
    fc.property(somewhere, ({ x, y }) => {
      const { best } = must(positionFromTies(tiesTo(x, y))).value
      expect(best.point.x.value).toBeCloseTo(x, 6)
      expect(best.point.y.value).toBeCloseTo(y, 6)
      expect(best.chiSquare).toBeLessThan(1e-12)
    }),
  )
})

test('two ties give the closed form’s two places and its uncertainty', () => {
  fc.assert(
    fc.property(somewhere, ({ x, y }) => {
      const [a, b] = [distance('A', x, y), distance('B', x, y)]
      const closed = must(
        positionFromTwoTies(uncertain(a, 0.01, 'tie A'), uncertain(b, 0.01, 'tie B'), exact(40)),
      ).value
      fc.pre(closed.geometry !== 'flat')
      const fit = must(positionFromTies([tie('A', HOUSE.A, a, 0.01), tie('B', HOUSE.B, b, 0.01)])).value
      expect(fit.best.point.y.value).toBeCloseTo(closed.away.y.value, 5)
      expect(fit.mirror?.point.y.value).toBeCloseTo(closed.toward.y.value, 5)
      expect(fit.best.drmsFt / closed.drmsFt).toBeCloseTo(1, 5)
      expect(fit.best.residuals.map((it) => it.standardized)).toEqual([null, null])
    }),
  )
})

test('lands where a general-purpose Levenberg–Marquardt lands, with errors in every tie', () => {
  const draw = normal(11)
  for (let trial = 0; trial < 200; trial++) {
    const [x, y] = [-60 + 160 * Math.abs(Math.sin(trial)), 8 + 90 * Math.abs(Math.cos(3 * trial))]
    const us = CORNERS.map((_, i) => 0.1 + 0.1 * i)
    const ties = CORNERS.map((it, i) => tie(it, HOUSE[it], distance(it, x, y) + us[i]! * draw(), us[i]!))
    const { best } = must(positionFromTies(ties)).value
    // Each tie over its own uncertainty, since the library does not converge with weights of its own.
    const reference = levenbergMarquardt(
      { x: CORNERS.map((_, i) => i), y: ties.map((it, i) => it.tie.value / us[i]!) },
      ([px, py]) =>
        (i) =>
          Math.hypot(px! - ties[i]!.at.x.value, py! - ties[i]!.at.y.value) / us[i]!,
      {
        initialValues: [x, y],
        maxIterations: 300,
        errorTolerance: 1e-14,
        gradientDifference: 1e-5,
        centralDifference: true,
      },
    )
    // Both stop at the same least squares; 0.0005 ft is far below any tape and far above either's last step.
    expect(best.point.x.value).toBeCloseTo(reference.parameterValues[0]!, 3)
    expect(best.point.y.value).toBeCloseTo(reference.parameterValues[1]!, 3)
    expect(best.chiSquare).toBeLessThanOrEqual(reference.parameterError + 1e-9)
  }
})

test('the covariance is that of a Monte Carlo run through the fit (JCGM 101:2008), one tape’s error shared', () => {
  const [x, y, u, tape] = [25, 60, 0.2, 0.15]
  const draw = normal(4)
  const shared = (corner: Corner, ft: number): CornerTie => ({
    corner,
    at: HOUSE[corner],
    tie: {
      value: ft,
      causes: new Map([
        [`tie ${corner}`, u],
        ['tape', tape],
      ]),
    },
  })
  const fitted = must(positionFromTies(CORNERS.map((it) => shared(it, distance(it, x, y))))).value.best
  const trials = 20_000
  let [sx, sy, sxx, sxy, syy] = [0, 0, 0, 0, 0]
  for (let i = 0; i < trials; i++) {
    const long = tape * draw()
    const ties = CORNERS.map((it) => shared(it, distance(it, x, y) + long + u * draw()))
    const { point } = must(positionFromTies(ties)).value.best
    const [dx, dy] = [point.x.value - x, point.y.value - y]
    sx += dx
    sy += dy
    sxx += dx * dx
    sxy += dx * dy
    syy += dy * dy
  }
  const [mx, my] = [sx / trials, sy / trials]
  const expected = covariance(fitted.point)
  // 20,000 trials: a variance is good to √(2/N) = 1 %; five times that.
  expect(Math.abs((sxx / trials - mx * mx) / expected.xx - 1)).toBeLessThan(0.05)
  expect(Math.abs((syy / trials - my * my) / expected.yy - 1)).toBeLessThan(0.05)
  expect(Math.abs(sxy / trials - mx * my - expected.xy)).toBeLessThan(
    0.05 * Math.sqrt(expected.xx * expected.yy),
  )
})

test('an uncertain corner moves the place as a Monte Carlo run says', () => {
  const draw = normal(8)
  const [x, y] = [15, 50]
  const corner = (dx: number, dy: number): Point => ({
    x: uncertain(40 + dx, 0.5, 'B x'),
    y: uncertain(dy, 0.5, 'B y'),
  })
  const solve = (dx: number, dy: number) =>
    must(
      positionFromTies([
        { corner: 'A', at: HOUSE.A, tie: uncertain(distance('A', x, y), 1e-4, 'tie A') },
        { corner: 'B', at: corner(dx, dy), tie: uncertain(distance('B', x, y), 1e-4, 'tie B') },
      ]),
    ).value.best.point
  const expected = covariance(solve(0, 0))
  let [sxx, syy] = [0, 0]
  const trials = 20_000
  for (let i = 0; i < trials; i++) {
    const point = solve(0.5 * draw(), 0.5 * draw())
    sxx += (point.x.value - x) ** 2
    syy += (point.y.value - y) ** 2
  }
  expect(Math.abs(sxx / trials / expected.xx - 1)).toBeLessThan(0.05)
  expect(Math.abs(syy / trials / expected.yy - 1)).toBeLessThan(0.05)
})

describe('what the residuals say', () => {
  test('four ties name the one that is a foot long', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...CORNERS),
        fc.double({ min: 5, max: 35, noNaN: true }),
        fc.double({ min: 15, max: 60, noNaN: true }),
        (wrong, x, y) => {
          const { disagreement, best } = must(positionFromTies(tiesTo(x, y, CORNERS, { [wrong]: 3 }))).value
          const redundancies = best.residuals.map(
            (it) => Math.abs(it.residualFt / (it.standardized ?? 1)) / 0.1,
          )
          // Where the geometry hardly checks a tie its error can't be seen: ask only where it can.
          fc.pre(Math.min(...redundancies) > 0.15)
          expect(disagreement).toMatchObject({ kind: 'tie', corner: wrong })
        },
      ),
    )
  })

  test('three ties show that one disagrees and can’t say which', () => {
    const fix = must(positionFromTies(tiesTo(20, 40, ['A', 'B', 'C'], { B: 2 }))).value
    expect(fix.redundancy).toBe(1)
    expect(fix.disagreement).toEqual({ kind: 'somewhere', among: ['A', 'B', 'C'] })
    const sizes = fix.best.residuals.map((it) => Math.abs(it.standardized!))
    expect(sizes[1]).toBeCloseTo(sizes[0]!, 6)
    expect(sizes[2]).toBeCloseTo(sizes[0]!, 6)
  })

  test('good ties raise it about once in a thousand for each (4,000 seeded fits)', () => {
    const draw = normal(99)
    let raised = 0
    for (let i = 0; i < 4000; i++) {
      const errors = Object.fromEntries(CORNERS.map((it) => [it, 0.1 * draw()]))
      if (must(positionFromTies(tiesTo(22, 45, CORNERS, errors))).value.disagreement.kind !== 'none') raised++
    }
    // At most four chances of 0.001 each; Poisson(16) is below 32 with probability 0.9998.
    expect(raised).toBeLessThan(32)
  })
})

describe('what leaves two places', () => {
  test('corners of one wall: the mirror image is told', () => {
    const onLine = [
      tie('A', HOUSE.A, 50),
      tie('B', HOUSE.B, Math.hypot(10, 40)),
      tie('mid', known(20, 0), Math.hypot(10, 40)),
    ]
    const { best, mirror } = must(positionFromTies(onLine)).value
    expect(best.point.y.value).toBeCloseTo(40, 6)
    expect(mirror?.point.y.value).toBeCloseTo(-40, 6)
  })

  test('a corner off the wall settles it', () => {
    expect(must(positionFromTies(tiesTo(30, 40))).value.mirror).toBeNull()
  })
})

test('turning and shifting the frame turns and shifts the answer, and nothing else', () => {
  fc.assert(
    fc.property(
      somewhere,
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      fc.double({ min: -50, max: 50, noNaN: true }),
      ({ x, y }, t, shift) => {
        const [c, s] = [Math.cos(t), Math.sin(t)]
        const turn = (px: number, py: number): [number, number] => [
          c * px - s * py + shift,
          s * px + c * py - shift,
        ]
        const errors = { A: 0.1, B: -0.05, C: 0.08, D: -0.12 }
        const plain = must(positionFromTies(tiesTo(x, y, CORNERS, errors))).value.best
        const ties = tiesTo(x, y, CORNERS, errors).map((it) => ({
          ...it,
          at: known(...turn(it.at.x.value, it.at.y.value)),
        }))
        const turned = must(positionFromTies(ties)).value.best
        const [ex, ey] = turn(plain.point.x.value, plain.point.y.value)
        expect(turned.point.x.value).toBeCloseTo(ex, 5)
        expect(turned.point.y.value).toBeCloseTo(ey, 5)
        expect(turned.drmsFt).toBeCloseTo(plain.drmsFt, 5)
        expect(turned.chiSquare).toBeCloseTo(plain.chiSquare, 5)
      },
    ),
  )
})

test('ties that can’t fix a place are refused with the reason', () => {
  expect(positionFromTies([tie('A', HOUSE.A, 10)])).toMatchObject({
    ok: false,
    error: { kind: 'too-few-ties' },
  })
  expect(positionFromTies([tie('A', HOUSE.A, 10), tie('A again', HOUSE.A, 10.1)])).toMatchObject({
    ok: false,
    error: { kind: 'no-spread' },
  })
})

test('exact ties among uncertain ones are kept to', () => {
  const ties = [
    { corner: 'A', at: HOUSE.A, tie: exact(50) },
    { corner: 'B', at: HOUSE.B, tie: exact(Math.hypot(10, 40)) },
    tie('C', HOUSE.C, Math.hypot(10, 68) + 0.5, 1),
  ]
  const { point } = must(positionFromTies(ties)).value.best
  expect(point.x.value).toBeCloseTo(30, 1)
  expect(point.y.value).toBeCloseTo(40, 1)
  expect(standardUncertainty(point.x)).toBeGreaterThanOrEqual(0)
})
