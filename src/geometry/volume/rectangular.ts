import { err, ok } from '../../base/result.ts'
import { type Faults, notNegative, positive, within } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import { exact } from '../../measure/uncertain.ts'
import type { Measured } from './body.ts'
import type { Rectangular } from './tank-shape.ts'

const ABSENT = exact(0)
/** What four rounded corners take from a sharp plan, per radius squared. */
const CORNERS = 4 - Math.PI

/**
 * Box, or prismatoid where the floor is smaller or larger than the liquid line. With L, W at the liquid line, l, w at
 * the floor and D the depth, Simpson's rule is exact for a plan area quadratic in height:
 *
 *     V = D × (2·L·W + 2·l·w + L·w + l·W) ÷ 6 − (4 − π)·r²·D
 *
 * which is L·W·D for upright walls and sharp corners. Four upright corners of radius r take off (4 − π)·r² of plan.
 */
export function rectangular(shape: Rectangular): Measured {
  const { length, width, liquidDepth, floorLength, floorWidth, cornerRadius, insideHeight } = shape
  const faults: Faults = []
  positive(faults, '/length', 'inside length', length)
  positive(faults, '/width', 'inside width', width)
  positive(faults, '/liquidDepth', 'liquid depth', liquidDepth)
  if (floorLength) positive(faults, '/floorLength', 'length at the floor', floorLength)
  if (floorWidth) positive(faults, '/floorWidth', 'width at the floor', floorWidth)
  if (insideHeight) {
    positive(faults, '/insideHeight', 'inside height', insideHeight)
    within(faults, '/liquidDepth', ['liquid depth', liquidDepth], ['inside height', insideHeight])
  }
  if (cornerRadius) {
    notNegative(faults, '/cornerRadius', 'corner radius', cornerRadius)
    const least = Math.min(...[length, width, floorLength, floorWidth].map((side) => side?.value ?? Infinity))
    if (least > 0 && cornerRadius.value > least / 2)
      faults.push({
        pointer: '/cornerRadius',
        message: 'The corner radius is more than half of the shortest side.',
      })
  }
  if (faults.length > 0) return err(faults)

  const tapered = floorLength !== undefined || floorWidth !== undefined
  const r = cornerRadius ?? ABSENT
  const inputs = tapered
    ? [length, width, liquidDepth, r, floorLength ?? length, floorWidth ?? width]
    : [length, width, liquidDepth, r]
  const [L, W, D, R] = [length.value, width.value, liquidDepth.value, r.value]
  const [l, w] = [floorLength?.value ?? L, floorWidth?.value ?? W]
  const corners = CORNERS * R * R
  const cornerSlope = -2 * CORNERS * R * D
  return ok({
    inputs,
    cuFt: tapered ? D * (prismatoid(L, W, l, w) - corners) : D * (L * W - corners),
    slopes: tapered
      ? [
          (D * (2 * W + w)) / 6,
          (D * (2 * L + l)) / 6,
          prismatoid(L, W, l, w) - corners,
          cornerSlope,
          (D * (2 * w + W)) / 6,
          (D * (2 * l + L)) / 6,
        ]
      : [W * D, L * D, L * W - corners, cornerSlope],
    volumeAt: ([a = 0, b = 0, d = 0, c = 0, e = a, f = b]) => d * (prismatoid(a, b, e, f) - CORNERS * c * c),
    surfaceAt: ([a = 0, b = 0, , c = 0]) => a * b - CORNERS * c * c,
    write: () => steps({ L, W, D, R, l, w, tapered }),
  })
}

/** Mean plan area over the depth, sharp corners. */
const prismatoid = (L: number, W: number, l: number, w: number): number =>
  (2 * L * W + 2 * l * w + L * w + l * W) / 6

type Numbers = { readonly [K in 'L' | 'W' | 'D' | 'R' | 'l' | 'w']: number } & { readonly tapered: boolean }

function steps({ L, W, D, R, l, w, tapered }: Numbers): readonly Step[] {
  const sharp = D * (tapered ? prismatoid(L, W, l, w) : L * W)
  const box: Step = tapered
    ? {
        says: 'Volume between a floor l × w and a liquid line L × W (prismatoid)',
        formula: 'V = D × (2 × L × W + 2 × l × w + L × w + l × W) ÷ 6',
        numbers: `${n(D)} ft × (2 × ${n(L)} × ${n(W)} + 2 × ${n(l)} × ${n(w)} + ${n(L)} × ${n(w)} + ${n(l)} × ${n(W)}) ÷ 6`,
        result: `${n(sharp)} cu ft`,
      }
    : {
        says: 'Volume of the liquid, upright walls',
        formula: 'V = L × W × D',
        numbers: `${n(L)} ft × ${n(W)} ft × ${n(D)} ft`,
        result: `${n(sharp)} cu ft`,
      }
  if (R === 0) return [box]
  return [
    box,
    {
      says: 'Less what four rounded corners take off',
      formula: 'V − (4 − π) × r² × D',
      numbers: `${n(sharp)} cu ft − (4 − π) × ${n(R)}² × ${n(D)}`,
      result: `${n(sharp - CORNERS * R * R * D)} cu ft`,
    },
  ]
}
