import { expandedSteps } from '../../measure/expanded-steps.ts'
import { extremes, spread } from '../../measure/extremes.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { minus, type Uncertain } from '../../measure/uncertain.ts'
import { chiSquareAbove, chiSquareQuantile } from './chi-square.ts'
import { type Estimate, estimateIn, estimates } from './estimate.ts'
import { covariance } from './point.ts'
import { causesOf, placeAt } from './shifted.ts'
import { choleskyOf, type Located, misfit, readingsIn, rowsAt, type Sighting, whitened } from './sightings.ts'

/** The answer itself, without how far apart the two are. */
export type Fitted = {
  /** How badly the readings of both fit one place, and its degrees of freedom. */
  readonly squared: number
  readonly degrees: number
  /** Probability that measurement alone puts the readings of one place so far apart or farther. */
  readonly p: number
  readonly coverage: number
  readonly verdict: 'same-place' | 'elsewhere'
}

export type Sameness = Fitted & {
  /** How far apart the two places are that fit best, ft; its uncertainty from the places solved again, not from slopes. */
  readonly distance: Uncertain
}

/**
 * Whether a thing was found where the record puts it, from the readings themselves. Where both taped the same two
 * corners one place means equal ties, whatever the arcs do: D² = Δᵀ·S⁻¹·Δ of the two differences follows chi-square
 * with 2 degrees of freedom exactly. Else (other corners, a third tie, a satellite fix, opposite sides) the readings of
 * both are fitted to one place, and what they leave over has as many degrees of freedom as readings less the two of the
 * place; a place forced onto the line of the corners has one more to spare. What both share, a baseline, counts once.
 */
export function samePlace(recorded: Located, found: Located, coverage = 0.95): Worked<Sameness> {
  const fitted = fitToOnePlace(recorded, found, coverage)
  const value: Sameness = { ...fitted.value, distance: distanceApart(recorded, found) }
  return worked(value, () => [
    ...fitted.steps,
    apartStep(recorded, found, value),
    ...expandedSteps(value.distance, 'ft'),
  ])
}

/** Whether the readings of both can be of one place. */
export function fitToOnePlace(recorded: Located, found: Located, coverage = 0.95): Worked<Fitted> {
  const joint = sameTies(recorded, found) ?? onePlace(recorded, found)
  const limit = chiSquareQuantile(coverage, joint.degrees)
  const value: Fitted = {
    squared: joint.squared,
    degrees: joint.degrees,
    p: chiSquareAbove(joint.squared, joint.degrees),
    coverage,
    verdict: joint.squared > limit ? 'elsewhere' : 'same-place',
  }
  return worked(value, () => [...joint.steps(), against(value, limit)])
}

type Joint = { readonly squared: number; readonly degrees: number; readonly steps: () => readonly Step[] }

type Tie = Extract<Sighting, { kind: 'tie' }>
const tiesOnly = (it: Located): readonly Tie[] | null => {
  const ties = it.sightings.filter((one) => one.kind === 'tie')
  return ties.length === it.sightings.length && ties.length === 2 ? ties : null
}

function sameTies(recorded: Located, found: Located): Joint | null {
  const [one, other] = [tiesOnly(recorded), tiesOnly(found)]
  if (!one || !other || one.some(({ corner }, i) => corner !== other[i]!.corner)) return null
  if (recorded.half !== null && found.half !== null && recorded.half !== found.half) return null
  const delta = { x: minus(other[0]!.tie, one[0]!.tie), y: minus(other[1]!.tie, one[1]!.tie) }
  const s = covariance(delta)
  const [dx, dy] = [delta.x.value, delta.y.value]
  const determinant = s.xx * s.yy - s.xy * s.xy
  const squared =
    determinant > 0
      ? (s.yy * dx * dx - 2 * s.xy * dx * dy + s.xx * dy * dy) / determinant
      : dx === 0 && dy === 0
        ? 0
        : Number.POSITIVE_INFINITY
  return {
    squared,
    degrees: 2,
    steps: () => [
      {
        says: 'The ties that were found less the ties on record',
        formula: 'ΔA = a′ − a, ΔB = b′ − b',
        numbers: `${n(other[0]!.tie.value)} − ${n(one[0]!.tie.value)}, ${n(other[1]!.tie.value)} − ${n(one[1]!.tie.value)}`,
        result: `ΔA = ${n(dx)} ft, ΔB = ${n(dy)} ft`,
      },
      {
        says: 'Variances of the differences and what they share, from what one standard deviation of each cause moves them by',
        formula: 'S_AA = Σ sA², S_AB = Σ sA·sB, S_BB = Σ sB²',
        numbers: [
          `${terms(delta.x, delta.x)} = ${n(s.xx)}`,
          `${terms(delta.x, delta.y)} = ${n(s.xy)}`,
          `${terms(delta.y, delta.y)} = ${n(s.yy)}`,
        ].join('; '),
        result: `S_AA = ${n(s.xx)}, S_AB = ${n(s.xy)}, S_BB = ${n(s.yy)} ft²`,
      },
      {
        says: 'The differences in units of their own uncertainty',
        formula: 'D² = (S_BB·ΔA² − 2·S_AB·ΔA·ΔB + S_AA·ΔB²) ÷ (S_AA·S_BB − S_AB²)',
        numbers:
          `(${n(s.yy)} × (${n(dx)})² − 2 × (${n(s.xy)}) × (${n(dx)}) × (${n(dy)}) + ${n(s.xx)} × (${n(dy)})²)` +
          ` ÷ (${n(s.xx)} × ${n(s.yy)} − (${n(s.xy)})²)`,
        result: `D² = ${n(squared)}`,
      },
    ],
  }
}

/** The readings of both, fitted to one place. */
function onePlace(recorded: Located, found: Located): Joint {
  const sightings = [...recorded.sightings, ...found.sightings]
  const opposite = recorded.half !== null && found.half !== null && recorded.half !== found.half
  const best = opposite
    ? onTheLine(sightings)
    : estimates({ sightings, half: recorded.half ?? found.half })[0]!
  const degrees = Math.max(1, readingsIn(sightings) - 2) + (best.onLine ? 1 : 0)
  return {
    squared: best.misfit,
    degrees,
    steps: () => {
      const rows = rowsAt(sightings, best.x, best.y)
      const left = whitened(
        choleskyOf(rows),
        rows.map(({ residual }) => residual),
      )
      return [
        {
          says: `${
            opposite
              ? 'Record and inspection name opposite sides of the wall: the one place they could share is on its line, at'
              : 'The one place that the readings of record and inspection fit best is'
          } x = ${n(best.x)}, y = ${n(best.y)} ft: what each leaves over there, in units of its own uncertainty, less what those before it explain`,
          formula: 'D² = Σ w²',
          numbers: left.map((w) => `${b(w)}²`).join(' + '),
          result: `D² = ${n(best.misfit)}`,
        },
      ]
    },
  }
}

/** The best place of the line through the corners, coming from both sides. */
function onTheLine(sightings: readonly Sighting[]): Estimate {
  const best = estimateIn(sightings, 1)
  let [x, step] = [best.x, 8]
  let cost = misfit(sightings, x, 0)
  while (step > 1e-6) {
    const [left, right] = [misfit(sightings, x - step, 0), misfit(sightings, x + step, 0)]
    if (Math.min(left, right) < cost) {
      x += left < right ? -step : step
      cost = Math.min(left, right)
    } else step /= 2
  }
  return { x, y: 0, half: 1, misfit: cost, onLine: true }
}

type Pair = { readonly from: Estimate; readonly to: Estimate; readonly ft: number }

/** The nearest two of the places that each may be. */
function nearest(recorded: Located, found: Located): Pair {
  const pairs = estimates(recorded).flatMap((from) =>
    estimates(found).map((to) => ({ from, to, ft: Math.hypot(to.x - from.x, to.y - from.y) })),
  )
  return pairs.reduce((a, b) => (b.ft < a.ft ? b : a))
}

/** U from the places solved again within two standard uncertainties: the larger of the two sides. */
function distanceApart(recorded: Located, found: Located): Uncertain {
  const { from, to, ft } = nearest(recorded, found)
  const ends = extremes(
    (shifts) => {
      const [a, b] = [placeAt(recorded, from.half, shifts), placeAt(found, to.half, shifts)]
      return Math.hypot(b.x - a.x, b.y - a.y)
    },
    causesOf(recorded, found),
  )
  return spread(ft, Math.max(ends.most - ft, ft - ends.least) / 2, ends, 'distance')
}

const n = (value: number): string => (Number.isFinite(value) ? printSignificant(value, 4) : '∞')

/** A number below zero in brackets, so that it reads as one. */
const b = (value: number): string => (value < 0 ? `(−${n(-value)})` : n(value))

/** What two figures share: the products of what each cause they have in common moves them by. */
function terms(one: Uncertain, other: Uncertain): string {
  const shared = [...one.causes].flatMap(([cause, shift]) => {
    const by = other.causes.get(cause)
    return by === undefined ? [] : [`${b(shift)} × ${b(by)}`]
  })
  return shared.length === 0 ? '0' : shared.join(' + ')
}

const against = (it: Fitted, limit: number): Step => ({
  says: `Against chi-square with ${it.degrees} degrees of freedom at ${printSignificant(it.coverage * 100, 3)} %`,
  formula: 'elsewhere when D² > χ²',
  numbers: `${n(it.squared)} against ${n(limit)}`,
  result: it.verdict === 'elsewhere' ? 'not the same place' : 'one place, as far as these measurements tell',
})

function apartStep(recorded: Located, found: Located, { distance }: Sameness): Step {
  const { from, to } = nearest(recorded, found)
  return {
    says: 'Distance between the recorded and the found position',
    formula: 'd = √((x′ − x)² + (y′ − y)²)',
    numbers: `√((${b(to.x)} − ${b(from.x)})² + (${b(to.y)} − ${b(from.y)})²)`,
    result: `${n(distance.value)} ft`,
  }
}
