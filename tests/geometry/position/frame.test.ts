import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { eastNorth, type FrameOnEarth, fromFrame, toFrame } from '../../../src/geometry/position/frame.ts'
import { ACCURACY_MEANINGS, axisSigmaM, positionFromGps } from '../../../src/geometry/position/gps-fix.ts'
import { covariance } from '../../../src/geometry/position/point.ts'
import { exact, standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'
import { normal } from './normal.ts'

const RAD = Math.PI / 180

/** The long way round: geodetic to earth-centerd coordinates, then rotated into east and north. */
function byEarthCentred(o: { latDeg: number; lonDeg: number }, p: { latDeg: number; lonDeg: number }) {
  const [a, f] = [6_378_137, 1 / 298.257223563]
  const e2 = f * (2 - f)
  const xyz = (lat: number, lon: number) => {
    const n = a / Math.sqrt(1 - e2 * Math.sin(lat) ** 2)
    return [
      n * Math.cos(lat) * Math.cos(lon),
      n * Math.cos(lat) * Math.sin(lon),
      n * (1 - e2) * Math.sin(lat),
    ] as const
  }
  const [lat, lon] = [o.latDeg * RAD, o.lonDeg * RAD]
  const [from, to] = [xyz(lat, lon), xyz(p.latDeg * RAD, p.lonDeg * RAD)]
  const [dx, dy, dz] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const east = -Math.sin(lon) * dx + Math.cos(lon) * dy
  const north = -Math.sin(lat) * Math.cos(lon) * dx - Math.sin(lat) * Math.sin(lon) * dy + Math.cos(lat) * dz
  return { east: east / 0.3048, north: north / 0.3048 }
}

test('the plane agrees with earth-centerd coordinates to a hundredth of a foot over a parcel', () => {
  const lat = fc.double({ min: -70, max: 70, noNaN: true })
  const lon = fc.double({ min: -180, max: 180, noNaN: true })
  const step = fc.double({ min: -0.0025, max: 0.0025, noNaN: true })
  fc.assert(
    fc.property(lat, lon, step, step, (latDeg, lonDeg, dLat, dLon) => {
      const [origin, place] = [
        { latDeg, lonDeg },
        { latDeg: latDeg + dLat, lonDeg: lonDeg + dLon },
      ]
      const [ours, exactly] = [eastNorth(origin, place), byEarthCentred(origin, place)]
      expect(Math.abs(ours.east - exactly.east)).toBeLessThan(0.01)
      expect(Math.abs(ours.north - exactly.north)).toBeLessThan(0.01)
    }),
    { numRuns: 500 },
  )
})

test('across the date line the short way is taken', () => {
  const { east } = eastNorth({ latDeg: 0, lonDeg: 179.9999 }, { latDeg: 0, lonDeg: -179.9999 })
  expect(east).toBeGreaterThan(0)
  expect(east).toBeLessThan(100)
})

test('one minute of latitude is a nautical mile, near enough: 6,046 to 6,107 ft from equator to pole', () => {
  const minute = (latDeg: number) =>
    eastNorth({ latDeg, lonDeg: 0 }, { latDeg: latDeg + 1 / 60, lonDeg: 0 }).north
  expect(minute(0)).toBeCloseTo(6046, -1)
  expect(minute(45)).toBeCloseTo(6076.8, -1)
})

describe('the frame of the house', () => {
  const frame = (bearing: number, u = 0): FrameOnEarth => ({
    cornerA: { latDeg: 44, lonDeg: -93 },
    bearingDeg: uncertain(bearing, u, 'bearing'),
  })

  test.each([
    // A wall seen from the south: A is its west end, B its east end, and away from the house is south.
    [90, 30, 0, 30, 0],
    [90, 0, -20, 0, 20],
    // A wall seen from the east: A is its south end, B its north end, and away is east.
    [0, 15, 0, 0, 15],
    [0, 0, 25, 25, 0],
  ])('bearing %d: %d ft east, %d ft north is x %d, y %d', (bearing, east, north, x, y) => {
    const point = toFrame(frame(bearing), exact(east), exact(north))
    expect(point.x.value).toBeCloseTo(x, 9)
    expect(point.y.value).toBeCloseTo(y, 9)
  })

  test('there and back is the same place', () => {
    const ft = fc.double({ min: -300, max: 300, noNaN: true })
    fc.assert(
      fc.property(ft, ft, fc.double({ min: 0, max: 360, noNaN: true }), (east, north, bearing) => {
        const back = fromFrame(frame(bearing), toFrame(frame(bearing), exact(east), exact(north)))
        expect(back.east.value).toBeCloseTo(east, 7)
        expect(back.north.value).toBeCloseTo(north, 7)
      }),
    )
  })

  test('a bearing 1° off moves a place 100 ft away by 1.75 ft, across the sight line', () => {
    const point = toFrame(frame(90, 1), exact(100), exact(0))
    expect(standardUncertainty(point.x)).toBeCloseTo(0, 9)
    expect(standardUncertainty(point.y)).toBeCloseTo((100 * Math.PI) / 180, 9)
  })

  test('a bearing’s error going out and coming back cancels', () => {
    const there = toFrame(frame(33, 2), uncertain(40, 1, 'e'), uncertain(-70, 1, 'n'))
    const { east, north } = fromFrame(frame(33, 2), there)
    expect(standardUncertainty(east)).toBeCloseTo(1, 9)
    expect(standardUncertainty(north)).toBeCloseTo(1, 9)
  })
})

describe('what a receiver’s accuracy means', () => {
  // Circular normal law: R68 = 1.5096 σ, R95 = 2.4477 σ, DRMS = 1.4142 σ (common practice of navigation).
  test.each([
    ['68-percent-circle', 1.5096],
    ['95-percent-circle', 2.4477],
    ['drms', Math.SQRT2],
    ['one-axis-sigma', 1],
  ] as const)('%s: R = %f σ', (meaning, ratio) => {
    expect(1 / axisSigmaM({ accuracyM: 1, meaning })).toBeCloseTo(ratio, 4)
  })

  test('68 and 95 in a hundred seeded fixes fall inside their circles', () => {
    const draw = normal(31)
    for (const [meaning, share] of [
      ['68-percent-circle', 0.68],
      ['95-percent-circle', 0.95],
    ] as const) {
      const sigma = axisSigmaM({ accuracyM: 4, meaning })
      let inside = 0
      for (let i = 0; i < 50_000; i++) if (Math.hypot(sigma * draw(), sigma * draw()) < 4) inside++
      // Binomial sd at most 0.0021; four of them.
      expect(Math.abs(inside / 50_000 - share)).toBeLessThan(0.0085)
    }
  })

  test('a fix’s ellipse is round, whatever the bearing', () => {
    for (const meaning of ACCURACY_MEANINGS) {
      const fix = { latDeg: 44.0002, lonDeg: -93.0003, accuracyM: 3, meaning }
      const { value } = positionFromGps(
        fix,
        { cornerA: { latDeg: 44, lonDeg: -93 }, bearingDeg: exact(37) },
        'fix',
      )
      const { xx, xy, yy } = covariance(value)
      expect(xx).toBeCloseTo(yy, 9)
      expect(xy).toBeCloseTo(0, 9)
    }
  })
})
