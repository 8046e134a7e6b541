import { invariant } from '../../base/invariant.ts'
import { isNonEmpty, type NonEmpty } from '../../base/non-empty.ts'
import type { PartialDate } from '../../base/partial-date.ts'
import { isAbsorption } from '../../catalog/kinds.ts'
import { estimates } from '../../geometry/position/estimate.ts'
import { causesOf, placeAt } from '../../geometry/position/shifted.ts'
import { compareWithMinimum } from '../../measure/compare.ts'
import { extremes } from '../../measure/extremes.ts'
import type { Step } from '../../measure/step.ts'
import { type Uncertain, uncertain } from '../../measure/uncertain.ts'
import { type Part, partFound, partOnRecord } from '../../records/part.ts'
import { requiredSetback } from '../../rules/apply/required-setback.ts'
import { aboutPairing, derived, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import { AGAINST_LEAST } from '../asked-of-code.ts'
import { type Case, permitDate } from '../case.ts'
import { check } from '../check.ts'
import { type Fact, firstKnown, known, lacking } from '../fact.ts'
import { foundPlace, type Place, recordedPlace } from '../facts/place.ts'
import type { DiscrepancyKind } from '../kinds.ts'
import type { Exhibit } from '../outcome.ts'
import type { Pairing } from '../pairing.ts'
import { exactly, measured } from '../quantity.ts'

type Asking = {
  readonly id: string
  readonly raises: DiscrepancyKind
  /** Tells two questions that raise one kind about one part apart. */
  readonly facet: string | null
  readonly name: 'setbacks' | 'setbacks.lender'
  readonly on: (pairing: Pairing, given: Case) => PartialDate | null
  readonly wells: (given: Case) => readonly Well[]
}

type PlacedWell = { readonly part: Part; readonly place: Place }

/**
 * Horizontal distance from each tank and absorption area to the wells, from where they were found (else recorded),
 * against the table of the permit's day: one answer, for the well that it stands worst with. Where ties leave two
 * places, the nearer one counts and the answer says so.
 */
const asking = ({ id, raises, facet, name, on, wells }: Asking) =>
  check({
    id,
    raises: [raises],
    subjects: (given: Case): readonly Pairing[] =>
      wells(given).length > 0
        ? given.pairings.filter(({ built }) => built.kind === 'tank' || isAbsorption(built.kind))
        : [],
    about: aboutPairing,
    facet: () => facet,
    facts: {
      here: placeOf,
      wells: (pairing: Pairing, given: Case) => placedWells(wells(given), pairing, given),
    },
    rules: { table: { name, on } },
    decide({ here, wells }, { table }, { built }) {
      const required = requiredSetback(table, isAbsorption(built.kind) ? built.kind : 'tank', 'private-well')
      if (!required.ok) {
        const { narrower: _, ...silence } = required.error
        return {
          verdict: 'does-not-apply',
          raises: null,
          reason: { is: 'no-rule', rules: [{ state: 'silent', rule: name, silence }] },
          certainty: open('undecided'),
        }
      }
      const least = required.value.value.ft
      const answers = wells.placed.map((well) => ({ well, ...against(here, well.place, least) }))
      const worst = answers.reduce((best, other) => (isWorse(other, best) ? other : best))
      const { verdict, distance, ambiguous, well } = worst
      return {
        verdict,
        raises: verdict === 'falls-short' ? raises : null,
        reason: {
          is: 'setback',
          from: well.part,
          distance: measured(distance, 'ft'),
          least: exactly(least, 'ft'),
          source: sourceOf(table),
          ...(name === 'setbacks.lender' ? { by: 'lender' as const } : {}),
          ambiguous,
          unplaced: wells.unplaced,
          comes: AGAINST_LEAST[verdict],
        },
        certainty:
          verdict === 'too-close-to-call' || ambiguous
            ? open('place-not-known')
            : table.verified === 'from-memory'
              ? likely('rule-not-verified')
              : firm('beyond-uncertainty'),
        exhibits: [
          derived('distance', measured(distance, 'ft'), well.part),
          requiredBy('distance', exactly(least, 'ft'), table, well.part),
        ],
        steps: [...here.steps, ...well.place.steps, ...required.value.steps, ...worst.steps],
      }
    },
  })

/** The law of the permit's day. */
export const setback = asking({
  id: 'setback',
  raises: 'setback-short',
  facet: null,
  name: 'setbacks',
  on: ({ built }) => permitDate(built),
  wells: wellsOnRecord,
})

/** A well that no permit shows was drilled since: it has to keep today's distance from what was there before it. */
export const wellSince = asking({
  id: 'well-since',
  raises: 'setback-short',
  facet: 'a well drilled since',
  name: 'setbacks',
  on: (_, { asOf }) => asOf,
  wells: wellsFound,
})

/** A lender's program asks by its own table, on the day of the question; what the county accepts it may not. */
export const lenderSetback = asking({
  id: 'lender-setback',
  raises: 'lender-distance-short',
  facet: null,
  name: 'setbacks.lender',
  on: (_, { asOf }) => asOf,
  wells: (given) => [...wellsOnRecord(given), ...wellsFound(given)],
})

type Answer = {
  readonly verdict: 'suffices' | 'falls-short' | 'too-close-to-call'
  readonly distance: Uncertain
  readonly ambiguous: boolean
  readonly steps: readonly Step[]
}

/** The nearest of the possible places decides; short of the rule it is only where there is one place on each side. */
function against(here: Place, there: Place, least: number): Answer {
  const distances = estimates(here.located).flatMap((a) =>
    estimates(there.located).map((b) => apart(here, a.half, there, b.half)),
  )
  const distance = distances.reduce((best, other) => (other.value < best.value ? other : best))
  const compared = compareWithMinimum(distance, least, 'ft')
  const ambiguous = distances.length > 1
  const { verdict } = compared.value
  return {
    verdict: verdict === 'falls-short' && ambiguous ? 'too-close-to-call' : verdict,
    distance,
    ambiguous,
    get steps() {
      return compared.steps
    },
  }
}

function apart(here: Place, half: 1 | -1, there: Place, other: 1 | -1): Uncertain {
  const { value, least, most } = extremes(
    (shifts) => {
      const [a, b] = [placeAt(here.located, half, shifts), placeAt(there.located, other, shifts)]
      return Math.hypot(b.x - a.x, b.y - a.y)
    },
    causesOf(here.located, there.located),
  )
  return uncertain(value, Math.max(most - value, value - least) / 2, 'distance')
}

const RANK = { 'falls-short': 0, 'too-close-to-call': 1, suffices: 2 } as const
const isWorse = (a: Answer, b: Answer): boolean =>
  RANK[a.verdict] < RANK[b.verdict] || (a.verdict === b.verdict && a.distance.value < b.distance.value)

type Well = { readonly part: Part; readonly placeFrom: (pairing: Pairing, given: Case) => Fact<Place> }

function wellsOnRecord({ pairings }: Case): readonly Well[] {
  return pairings
    .filter(({ built }) => built.kind === 'well')
    .map((well) => ({ part: partOnRecord(well.built), placeFrom: (_, given) => placeOf(well, given) }))
}

function wellsFound({ unrecorded }: Case): readonly Well[] {
  return unrecorded
    .filter(({ kind, outcome }) => kind === 'well' && outcome === 'found')
    .map((found) => {
      const part = partFound(found)
      return {
        part,
        placeFrom: ({ built: { reference } }, { findings }) =>
          findings ? foundPlace(found, { reference, part }, findings) : lacking({ gap: 'no-inspection' }),
      }
    })
}

/** The wells that something places, with the names of those that nothing does. */
function placedWells(
  wells: readonly Well[],
  pairing: Pairing,
  given: Case,
): Fact<{ readonly placed: NonEmpty<PlacedWell>; readonly unplaced: readonly Part[] }> {
  const asked = wells.map(({ part, placeFrom }) => ({ part, fact: placeFrom(pairing, given) }))
  const placed: PlacedWell[] = []
  const exhibits: Exhibit[] = []
  for (const { part, fact } of asked) {
    if (fact.state !== 'known') continue
    placed.push({ part, place: fact.value })
    exhibits.push(...fact.exhibits)
  }
  const unplaced = asked.filter(({ fact }) => fact.state !== 'known').map(({ part }) => part)
  if (!isNonEmpty(placed)) return unplacedFact(asked[0]!.fact)
  return known({ placed, unplaced }, ...exhibits)
}

function placeOf({ built, found }: Pairing, given: Case): Fact<Place> {
  return found && given.findings && found.tie
    ? firstKnown(
        foundPlace(found, { reference: built.reference, part: partOnRecord(built) }, given.findings),
        recordedPlace(built, given),
      )
    : recordedPlace(built, given)
}

/** Why nothing places the well. */
function unplacedFact(fact: Fact<Place>): Fact<never> {
  invariant(fact.state !== 'known', 'a well that is placed is among the placed')
  return fact
}
