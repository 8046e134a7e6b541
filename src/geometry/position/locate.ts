import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { standardUncertainty } from '../../measure/uncertain.ts'
import { chiSquareQuantile } from './chi-square.ts'
import { type Estimate, estimates, MIRROR_WITHIN } from './estimate.ts'
import { choleskyOf, type Located, readingsIn, rowsAt, type Sighting, whitened } from './sightings.ts'

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

const n = (value: number): string => {
  const text = printSignificant(value, 6)
  return text.startsWith('-') ? `(−${text.slice(1)})` : text
}

function working(
  { sightings }: Located,
  { places, leftover: left, spare, suspects: bad }: Location,
): readonly Step[] {
  const [best, mirror] = places
  const { x, y, misfit } = best!
  const rows = rowsAt(sightings, x, y)
  const units = whitened(
    choleskyOf(rows),
    rows.map(({ residual }) => residual),
  )
  return [
    {
      says: `The place that fits everything sighted best is x = ${n(x)}, y = ${n(y)} ft: what each reading leaves over there, in units of its own uncertainty, less what those before it explain`,
      formula: 'Q = Σ w²',
      numbers: units.map((w) => `${n(w)}²`).join(' + '),
      result: `Q = ${printSignificant(misfit, 6)}`,
    },
    ...sightings.map((it, i) => leftoverStep(it, left[i]!, best!)),
    fitStep(misfit, spare, bad),
    ...(mirror
      ? [
          {
            says: `A second place, across the line of the corners, fits as well as can be told: x = ${n(mirror.x)}, y = ${n(mirror.y)} ft`,
            formula: 'Q′ − Q < χ² (1 degree, 99 %)',
            numbers: `${n(mirror.misfit)} − ${n(misfit)} < ${MIRROR_WITHIN}`,
            result: 'open',
          },
        ]
      : []),
  ]
}

/** What one sighting leaves over at the place: a tie its length, a fix how far off it lies. */
function leftoverStep(it: Sighting, { of, ft, expandedFt }: Leftover, { x, y }: Estimate): Step {
  const [from, read] = it.kind === 'tie' ? [it.at, `${n(it.tie.value)} − `] : [it.point, '']
  return {
    says: `What ${of} leaves over there, known to ± ${printSignificant(expandedFt, 3)} ft (k = 2)`,
    formula: it.kind === 'tie' ? 'v = read − √((x − x₀)² + (y − y₀)²)' : 'v = √((x − x₀)² + (y − y₀)²)',
    numbers: `${read}√((${n(x)} − ${n(from.x.value)})² + (${n(y)} − ${n(from.y.value)})²)`,
    result: `${printSignificant(ft, 4)} ft`,
  }
}

function fitStep(misfit: number, spare: number, bad: readonly string[]): Step {
  const result =
    bad.length === 0
      ? 'all fit one place'
      : bad.length === 1
        ? `${bad[0]} does not fit`
        : `one of ${bad.join(', ')} does not fit; the readings do not tell which`
  const says = 'Whether they fit one place'
  if (spare < 1)
    return { says, formula: 'lacking', numbers: 'no reading to spare', result: 'nothing to check them by' }
  const limit = chiSquareQuantile(FITS, spare)
  return {
    says: `${says}: chi-square, ${spare} ${spare === 1 ? 'degree' : 'degrees'} of freedom, 99.9 %`,
    formula: misfit <= limit ? 'Q ≤ χ²' : 'Q > χ²',
    numbers: `${n(misfit)} ${misfit <= limit ? '≤' : '>'} ${n(limit)}`,
    result,
  }
}
