import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { standardUncertainty } from '../../measure/uncertain.ts'
import { chiSquareQuantile } from './chi-square.ts'
import { type Estimate, estimates } from './estimate.ts'
import { type Located, readingsIn, rowsAt, type Sighting } from './sightings.ts'

/** What each sighting leaves over at a place, ft: a tie its length, a fix how far off it lies. */
export type Leftover = { readonly of: string; readonly ft: number; readonly expandedFt: number }

export type Location = {
  /** Best first; two where the readings leave both sides of the line open. */
  readonly places: readonly Estimate[]
  readonly leftover: readonly Leftover[]
  /** Readings beyond the two that a place needs. */
  readonly spare: number
  /** The sightings any one of which being wrong would explain what does not fit; none where all fit. */
  readonly suspects: readonly string[]
}

/** What does not fit is beyond chance once in a thousand times: the level of data snooping in geodesy. */
const FITS = 0.999
/**
 * How much worse a place may fit with another sighting left out and still be as good an explanation: 99 % of one degree of
 * freedom. The wrong one is then named alone about once in a hundred times, however near the two stand to each other.
 */
const AS_GOOD = chiSquareQuantile(0.99, 1)

/**
 * A place from everything that was sighted of it, ties and fixes alike, each by its own uncertainty. Where they don't
 * fit one place, each is left out in turn: the one without which the rest fit is the suspect, and so is every other
 * that explains as much. One reading to spare shows that something is wrong and never what.
 */
export function locate(located: Located): Worked<Location> {
  const places = estimates(located)
  const { sightings } = located
  const [best] = places
  const spare = readingsIn(sightings) - 2
  const fits = spare < 1 || best!.misfit <= chiSquareQuantile(FITS, spare)
  const value: Location = {
    places,
    leftover: sightings.map((it) => leftover(it, best!)),
    spare,
    suspects: fits ? [] : suspects(located),
  }
  return worked(value, () => working(located, value))
}

function suspects({ sightings, half }: Located): readonly string[] {
  const without = sightings.map((it) => {
    const rest = sightings.filter((other) => other !== it)
    return {
      of: nameOf(it),
      misfit: readingsIn(rest) < 2 ? 0 : estimates({ sightings: rest, half })[0]!.misfit,
    }
  })
  const least = Math.min(...without.map(({ misfit }) => misfit))
  return without.filter(({ misfit }) => misfit - least < AS_GOOD).map(({ of }) => of)
}

export const nameOf = (it: Sighting): string => (it.kind === 'tie' ? it.corner : it.name)

function leftover(it: Sighting, { x, y }: Estimate): Leftover {
  const rows = rowsAt([it], x, y)
  const u = Math.max(...rows.map(({ causes }) => standardUncertainty({ value: 0, causes })))
  const ft = it.kind === 'tie' ? rows[0]!.residual : Math.hypot(rows[0]!.residual, rows[1]!.residual)
  return { of: nameOf(it), ft, expandedFt: 2 * u }
}

const n = (value: number): string => printSignificant(value, 4)

function working(
  { sightings }: Located,
  { places, leftover: left, spare, suspects: bad }: Location,
): readonly Step[] {
  const [best, mirror] = places
  const told = sightings.map((it) =>
    it.kind === 'tie'
      ? `${it.corner} at (${n(it.at.x.value)}, ${n(it.at.y.value)}): ${n(it.tie.value)} ft, u = ${n(standardUncertainty(it.tie))}`
      : `${it.name}: (${n(it.point.x.value)}, ${n(it.point.y.value)}) ft, u = ${n(standardUncertainty(it.point.x))}`,
  )
  const says =
    bad.length === 0
      ? spare < 1
        ? 'nothing to check them by'
        : 'all fit one place'
      : bad.length === 1
        ? `${bad[0]} does not fit`
        : `one of ${bad.join(', ')} does not fit; the readings do not tell which`
  return [
    {
      says: 'The place that fits everything sighted best, each by its own uncertainty',
      formula: 'least Q = vᵀ·Σ⁻¹·v',
      numbers: told.join('; '),
      result: `x = ${n(best!.x)}, y = ${n(best!.y)} ft, Q = ${n(best!.misfit)}`,
    },
    {
      says: 'What each leaves over there',
      formula: 'v = read − computed',
      numbers: left.map(({ of, ft, expandedFt }) => `${of} ${n(ft)} ± ${n(expandedFt)} ft`).join(', '),
      result: says,
    },
    ...(mirror
      ? [
          {
            says: 'A second place fits as well as can be told',
            formula: 'across the line of the corners',
            numbers: `Q = ${n(mirror.misfit)} against ${n(best!.misfit)}`,
            result: `x = ${n(mirror.x)}, y = ${n(mirror.y)} ft`,
          },
        ]
      : []),
  ]
}
