import fc from 'fast-check'
import type { TankShape } from '../../../src/geometry/volume/tank-shape.ts'
import { measuredLength } from '../../../src/measure/measured-length.ts'
import { exact, type Uncertain } from '../../../src/measure/uncertain.ts'
import {
  circleBelow,
  dishBelow,
  ellipseBelow,
  ellipsoidHeadBelow,
  frustum,
  ovalBelow,
  sphereBelow,
  taperedBox,
} from './solids-by-definition.ts'

/** A shape, and its volume in cu ft by its definition. */
export type Case = { readonly shape: TankShape; readonly cuFt: number }

export type Make = (ft: number, name: string) => Uncertain
export const noError: Make = (ft) => exact(ft)
/** Every length by one tape held inside, so that its own error is shared. */
export const taped: Make = (ft, name) => measuredLength(ft, 'inside-tape', 'tape', name)

const side = fc.double({ min: 2, max: 14, noNaN: true })
const share = fc.double({ min: 0.05, max: 1, noNaN: true })

/** One arbitrary for each shape; `m` makes a length of a number. */
export const cases = (m: Make): { readonly [name: string]: fc.Arbitrary<Case> } => ({
  'box, upright walls': fc.tuple(side, side, side).map(([L, W, D]) => ({
    shape: { kind: 'rectangular', length: m(L, 'L'), width: m(W, 'W'), liquidDepth: m(D, 'D') },
    cuFt: taperedBox(L, W, D, L, W),
  })),
  'box, sloping walls and round corners': fc
    .tuple(side, side, side, share, share, fc.double({ min: 0, max: 0.9, noNaN: true }))
    .map(([L, W, D, s, t, q]) => {
      const [l, w] = [L * (0.6 + 0.6 * s), W * (0.6 + 0.6 * t)]
      const r = (q * Math.min(L, W, l, w)) / 2
      return {
        shape: {
          kind: 'rectangular',
          length: m(L, 'L'),
          width: m(W, 'W'),
          liquidDepth: m(D, 'D'),
          floorLength: m(l, 'l'),
          floorWidth: m(w, 'w'),
          cornerRadius: m(r, 'r'),
        },
        cuFt: taperedBox(L, W, D, l, w, r),
      }
    }),
  'standing cylinder': fc.tuple(side, side).map(([d, D]) => ({
    shape: { kind: 'vertical-cylinder', diameter: m(d, 'd'), liquidDepth: m(D, 'D') },
    cuFt: frustum(d, D, d),
  })),
  'standing cylinder, tapered': fc.tuple(side, side, side).map(([d, D, e]) => ({
    shape: {
      kind: 'vertical-cylinder',
      diameter: m(d, 'd'),
      liquidDepth: m(D, 'D'),
      floorDiameter: m(e, 'e'),
    },
    cuFt: frustum(d, D, e),
  })),
  'lying cylinder, flat ends': fc.tuple(side, side, share).map(([d, L, s]) => ({
    shape: {
      kind: 'horizontal-cylinder',
      diameter: m(d, 'd'),
      length: m(L, 'L'),
      liquidDepth: m(s * d, 'D'),
    },
    cuFt: circleBelow(d, s * d) * L,
  })),
  'lying cylinder, dished ends': fc
    .tuple(side, side, share, fc.double({ min: 0.02, max: 1, noNaN: true }))
    .map(([d, L, s, b]) => ({
      shape: {
        kind: 'horizontal-cylinder',
        diameter: m(d, 'd'),
        length: m(L, 'L'),
        liquidDepth: m(s * d, 'D'),
        ends: { kind: 'spherical-segment', rise: m((b * d) / 2, 'c') },
      },
      cuFt: circleBelow(d, s * d) * L + 2 * dishBelow(d, s * d, (b * d) / 2),
    })),
  'lying cylinder, 2:1 elliptical ends': fc.tuple(side, side, share).map(([d, L, s]) => ({
    shape: {
      kind: 'horizontal-cylinder',
      diameter: m(d, 'd'),
      length: m(L, 'L'),
      liquidDepth: m(s * d, 'D'),
      ends: { kind: 'elliptical' },
    },
    cuFt: circleBelow(d, s * d) * L + 2 * ellipsoidHeadBelow(d, s * d, d / 4),
  })),
  'lying cylinder, elliptical ends of measured rise': fc
    .tuple(side, side, share, share)
    .map(([d, L, s, b]) => ({
      shape: {
        kind: 'horizontal-cylinder',
        diameter: m(d, 'd'),
        length: m(L, 'L'),
        liquidDepth: m(s * d, 'D'),
        ends: { kind: 'elliptical', rise: m(b * d, 'c') },
      },
      cuFt: circleBelow(d, s * d) * L + 2 * ellipsoidHeadBelow(d, s * d, b * d),
    })),
  'lying oval': fc.tuple(side, side, side, share).map(([w, H, L, s]) => ({
    shape: {
      kind: 'horizontal-oval',
      width: m(w, 'w'),
      height: m(H, 'H'),
      length: m(L, 'L'),
      liquidDepth: m(s * H, 'D'),
    },
    cuFt: ovalBelow(w, H, s * H) * L,
  })),
  'lying ellipse': fc.tuple(side, side, side, share).map(([w, H, L, s]) => ({
    shape: {
      kind: 'horizontal-ellipse',
      width: m(w, 'w'),
      height: m(H, 'H'),
      length: m(L, 'L'),
      liquidDepth: m(s * H, 'D'),
    },
    cuFt: ellipseBelow(w, H, s * H) * L,
  })),
  'standing oval': fc.tuple(side, share, side).map(([L, s, D]) => ({
    shape: { kind: 'vertical-oval', length: m(L, 'L'), width: m(s * L, 'w'), liquidDepth: m(D, 'D') },
    cuFt: ovalBelow(L, s * L, s * L) * D,
  })),
  sphere: fc.tuple(side, share).map(([d, s]) => ({
    shape: { kind: 'sphere', diameter: m(d, 'd'), liquidDepth: m(s * d, 'D') },
    cuFt: sphereBelow(d, s * d),
  })),
  'two compartments': fc.tuple(side, side, side, side).map(([L, l, W, D]) => ({
    shape: {
      kind: 'two-compartments',
      first: { kind: 'rectangular', length: m(L, 'L1'), width: m(W, 'W'), liquidDepth: m(D, 'D') },
      second: { kind: 'rectangular', length: m(l, 'L2'), width: m(W, 'W'), liquidDepth: m(D, 'D') },
    },
    cuFt: taperedBox(L, W, D, L, W) + taperedBox(l, W, D, l, W),
  })),
  'tanks in series': fc.tuple(side, side, side, share).map(([d, D, L, s]) => ({
    shape: {
      kind: 'in-series',
      tanks: [
        { kind: 'vertical-cylinder', diameter: m(d, 'd'), liquidDepth: m(D, 'D') },
        { kind: 'horizontal-cylinder', diameter: m(d, 'd2'), length: m(L, 'L'), liquidDepth: m(s * d, 'D2') },
      ],
    },
    cuFt: frustum(d, D, d) + circleBelow(d, s * d) * L,
  })),
})
