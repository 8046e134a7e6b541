import { unreachable } from '../../base/invariant.ts'
import { err, ok, type Result } from '../../base/result.ts'
import type { Issue } from '../../measure/issue.ts'
import { type Faults, positive } from '../../measure/length-faults.ts'
import { printSignificant as n, printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { exact, plus, propagate, scale, times, type Uncertain } from '../../measure/uncertain.ts'
import type { AbsorptionShape, CountedSurface } from './absorption-shape.ts'

/** One surface: its area, and how it came about. */
type Surface = { readonly sqFt: Uncertain; readonly step: Step }

const ONE_FOOT = exact(1)

/**
 * Absorption area provided, sq ft, of the surfaces a rule counts, with its uncertainty and the working. Comes back
 * with issues where a dimension is not a length, or where the rule counts a wall whose depth was not measured.
 */
export function absorptionArea(
  shape: AbsorptionShape,
  counts: CountedSurface,
): Result<Worked<Uncertain>, readonly Issue[]> {
  const faults = faultsOf(shape, counts)
  if (faults.length > 0) return err(faults)
  const surfaces = surfacesOf(shape, counts)
  const total = surfaces.map(({ sqFt }) => sqFt).reduce(plus)
  return ok(
    worked(total, () => [
      ...surfaces.map(({ step }) => step),
      ...(surfaces.length > 1
        ? [
            {
              says: 'Absorption area, all that is counted',
              formula: 'A = bottom + sidewall',
              numbers: surfaces.map(({ sqFt }) => `${n(sqFt.value)} sq ft`).join(' + '),
              result: `${n(total.value)} sq ft`,
            },
          ]
        : []),
    ]),
  )
}

function surfacesOf(shape: AbsorptionShape, counts: CountedSurface): readonly [Surface, ...Surface[]] {
  const bottom = () => bottomOf(shape)
  switch (counts) {
    case 'bottom':
      return [bottom()]
    case 'sidewall':
      return [sidewallOf(shape, depthOf(shape), false)]
    case 'bottom-and-sidewall':
      return [bottom(), sidewallOf(shape, depthOf(shape), false)]
    case 'bottom-and-one-foot-of-sidewall':
      return [bottom(), sidewallOf(shape, ONE_FOOT, true)]
    default:
      return unreachable(counts, 'counted surface')
  }
}

function bottomOf(shape: AbsorptionShape): Surface {
  switch (shape.kind) {
    case 'pits': {
      const { diameter: d, count } = shape
      const sqFt = propagate((count * Math.PI * d.value ** 2) / 4, [d], [(count * Math.PI * d.value) / 2])
      return surface('Bottom of the pits', 'N × π × d² ÷ 4', `${count} × π × ${n(d.value)}² ÷ 4`, sqFt)
    }
    case 'bed':
      return rectangle('Bottom of the bed', shape.length, shape.width)
    case 'mound':
      return rectangle('Basal area of the mound', shape.basalLength, shape.basalWidth)
    case 'trenches':
    case 'chambers': {
      const [length, written] = lengthOf(shape.lengths)
      const credit = shape.kind === 'chambers' ? shape.credit : 1
      const sqFt = scale(times(length, shape.width), credit)
      const [formula, numbers] = [`L × W`, `${written} × ${n(shape.width.value)} ft`]
      return credit === 1
        ? surface(`Bottom of the ${shape.kind}`, formula, numbers, sqFt)
        : surface(
            'Bottom of the chambers, with the credit of their approval',
            `${formula} × credit`,
            `${numbers} × ${n(credit)}`,
            sqFt,
          )
    }
    default:
      return unreachable(shape, 'absorption shape')
  }
}

/** Wall of the given height: round a pit or a bed, along both sides of a trench, and its ends too when `allRound`. */
function sidewallOf(shape: AbsorptionShape, height: Uncertain, allRound: boolean): Surface {
  switch (shape.kind) {
    case 'pits': {
      const { diameter: d, count } = shape
      const sqFt = scale(times(d, height), count * Math.PI)
      const numbers = `${count} × π × ${n(d.value)} × ${n(height.value)}`
      return surface('Sidewall of the pits', 'N × π × d × h', numbers, sqFt)
    }
    case 'bed':
    case 'mound': {
      const [length, width] =
        shape.kind === 'bed' ? [shape.length, shape.width] : [shape.basalLength, shape.basalWidth]
      const sqFt = times(scale(plus(length, width), 2), height)
      const numbers = `2 × (${n(length.value)} + ${n(width.value)}) × ${n(height.value)}`
      return surface(`Sidewall all round the ${shape.kind}`, '2 × (L + W) × h', numbers, sqFt)
    }
    case 'trenches':
    case 'chambers': {
      const [length, written] = lengthOf(shape.lengths)
      if (!allRound) {
        const sqFt = scale(times(length, height), 2)
        return surface('Both long sides', '2 × L × h', `2 × ${written} × ${n(height.value)}`, sqFt)
      }
      const ends = scale(shape.width, shape.lengths.length)
      const sqFt = times(scale(plus(length, ends), 2), height)
      const numbers = `2 × (${written} + ${shape.lengths.length} × ${n(shape.width.value)}) × ${n(height.value)}`
      return surface('Sidewall all round, ends included', '2 × (L + N × W) × h', numbers, sqFt)
    }
    default:
      return unreachable(shape, 'absorption shape')
  }
}

const surface = (says: string, formula: string, numbers: string, sqFt: Uncertain): Surface => ({
  sqFt,
  step: { says, formula, numbers, result: `${printSignificant(sqFt.value)} sq ft` },
})

const rectangle = (says: string, length: Uncertain, width: Uncertain): Surface =>
  surface(says, 'L × W', `${n(length.value)} ft × ${n(width.value)} ft`, times(length, width))

/** Total length, and the lengths it is the sum of. */
function lengthOf(lengths: readonly Uncertain[]): readonly [Uncertain, string] {
  const total = lengths.reduce(plus)
  return [
    total,
    lengths.length === 1 ? n(total.value) : `(${lengths.map(({ value }) => n(value)).join(' + ')})`,
  ]
}

const depthOf = (shape: AbsorptionShape): Uncertain =>
  ('effectiveDepth' in shape ? shape.effectiveDepth : undefined) ?? exact(Number.NaN)

function faultsOf(shape: AbsorptionShape, counts: CountedSurface): Faults {
  const faults: Faults = []
  const fault = (pointer: string, message: string) => faults.push({ pointer, message })
  const countsWall = counts === 'sidewall' || counts === 'bottom-and-sidewall'
  if (countsWall && !('effectiveDepth' in shape && shape.effectiveDepth))
    fault('/effectiveDepth', 'The rule counts the sidewall: measure how much of the wall takes effluent.')
  if ('effectiveDepth' in shape && shape.effectiveDepth)
    positive(faults, '/effectiveDepth', 'effective depth', shape.effectiveDepth)
  switch (shape.kind) {
    case 'pits':
      positive(faults, '/diameter', 'diameter', shape.diameter)
      if (!(Number.isInteger(shape.count) && shape.count > 0))
        fault('/count', `There are ${shape.count} pits: write how many there are, a whole number above zero.`)
      break
    case 'bed':
      positive(faults, '/length', 'length', shape.length)
      positive(faults, '/width', 'width', shape.width)
      break
    case 'mound':
      positive(faults, '/basalLength', 'basal length', shape.basalLength)
      positive(faults, '/basalWidth', 'basal width', shape.basalWidth)
      break
    case 'trenches':
    case 'chambers':
      positive(faults, '/width', 'width', shape.width)
      if (shape.lengths.length === 0)
        fault('/lengths', `There is no length: write one for each of the ${shape.kind}.`)
      for (const [i, length] of shape.lengths.entries()) positive(faults, `/lengths/${i}`, 'length', length)
      if (shape.kind === 'chambers' && !(shape.credit > 0 && Number.isFinite(shape.credit)))
        fault(
          '/credit',
          `The credit is ${shape.credit}: it must be more than zero, and 1 where none is given.`,
        )
      break
    default:
      unreachable(shape, 'absorption shape')
  }
  return faults
}
