import { isNonEmpty, type NonEmpty } from '../../base/non-empty.ts'
import type { PartialDate } from '../../base/partial-date.ts'
import { isAbsorption } from '../../catalog/kinds.ts'
import { setback as keeps, nominallyApart, type SetbackAnswer } from '../../geometry/setback/setback.ts'
import type { Worked } from '../../measure/step.ts'
import type { Part } from '../../records/part.ts'
import { requiredSetback } from '../../rules/apply/required-setback.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import type { SetbackFrom, SetbackTo } from '../../rules/things.ts'
import { derived, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import { AGAINST_LEAST, type Occasion } from '../asked-of-code.ts'
import { type Case, permitDate } from '../case.ts'
import { check } from '../check.ts'
import { type Fact, known } from '../fact.ts'
import {
  houseWall,
  type Kept,
  keptFound,
  keptOnRecord,
  partOf,
  placeOf,
  type Sited,
} from '../facts/kept-apart.ts'
import type { DiscrepancyKind } from '../kinds.ts'
import type { Exhibit } from '../outcome.ts'
import { exactly, measured } from '../quantity.ts'

type Asking = {
  readonly id: string
  readonly raises: DiscrepancyKind
  /** Tells questions of one check about one part apart. */
  readonly facet: string | null
  readonly name: 'setbacks' | 'setbacks.lender'
  readonly to: SetbackTo
  readonly occasion?: Occasion
  readonly on: (kept: Kept, given: Case) => PartialDate | null
  /** Which parts are asked, and of what they have to keep away from. */
  readonly parts: (given: Case) => readonly Kept[]
  readonly others: (given: Case) => readonly Kept[]
}

/**
 * Horizontal distance, outline to outline, from each tank and absorption area to what it has to keep away from, from where
 * they were found (else recorded): one answer, for the one that it stands worst with.
 */
const asking = ({ id, raises, facet, name, to, occasion, on, parts, others }: Asking) =>
  check({
    id,
    raises: [raises],
    subjects: (given: Case): readonly Kept[] =>
      others(given).length > 0 ? parts(given).filter((kept) => isAsked({ name, to, on }, kept, given)) : [],
    about: partOf,
    facet: () => facet,
    facts: {
      here: placeOf,
      there: (kept: Kept, given: Case) => placed(others(given), kept, given),
    },
    rules: { table: { name, on } },
    decide({ here, there }, { table }, kept) {
      const required = requiredSetback(table, fromOf(kept), to)
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
      const answers = nearestOf(there.placed, here).map((it) => ({
        it,
        answer: keeps(here.body, it.sited.body, least),
      }))
      const { it, answer } = answers.reduce((best, other) =>
        isWorse(other.answer, best.answer) ? other : best,
      )
      const { verdict, nearest, farthest, ambiguous } = answer.value
      const span = farthest.value - nearest.value > 1 / 24
      const unsized = here.body.extent.kind === 'unknown'
      const told = span && (unsized || verdict === 'falls-short') ? farthest : nearest
      return {
        verdict,
        raises: verdict === 'falls-short' ? raises : null,
        reason: {
          is: 'setback',
          from: it.part,
          distance: measured(told, 'ft'),
          span: !span ? null : unsized ? 'size-unknown' : told === farthest ? 'at-most' : 'at-least',
          least: exactly(least, 'ft'),
          source: sourceOf(table),
          to: to === 'building' ? 'building' : 'well',
          ...(occasion ? { occasion } : {}),
          ...(name === 'setbacks.lender' ? { by: 'lender' as const } : {}),
          ambiguous,
          unplaced: there.unplaced,
          comes: AGAINST_LEAST[verdict],
        },
        certainty:
          verdict === 'too-close-to-call' || ambiguous
            ? open('place-not-known')
            : table.verified === 'from-memory'
              ? likely('rule-not-verified')
              : firm('beyond-uncertainty'),
        exhibits: [
          derived('distance', measured(told, 'ft'), it.part),
          requiredBy('distance', exactly(least, 'ft'), table, it.part),
        ],
        steps: [...here.steps, ...it.sited.steps, ...required.value.steps, ...answer.steps],
      }
    },
  })

const fromOf = ({ kind }: Kept): SetbackFrom => (kind !== 'house' && isAbsorption(kind) ? kind : 'tank')

/** Of wells every part is asked, and a table that says nothing is told; of the rest only what the table has. */
function isAsked({ name, to, on }: Pick<Asking, 'name' | 'to' | 'on'>, kept: Kept, given: Case): boolean {
  if (to === 'private-well') return true
  const day = on(kept, given)
  if (day === null) return false
  const table = inForceThroughout(given.book, given.county, name, day)
  return table.state === 'in-force' && requiredSetback(table, fromOf(kept), to).ok
}

/** Today's distance is a question of its own where it is not the one of the permit's day. */
function otherToday(kept: Kept, given: Case): boolean {
  const day = kept.built ? permitDate(kept.built) : null
  if (day === null) return true
  const ft = (on: PartialDate): number | null => {
    const table = inForceThroughout(given.book, given.county, 'setbacks', on)
    const found = table.state === 'in-force' ? requiredSetback(table, fromOf(kept), 'private-well') : null
    return found?.ok ? found.value.value.ft : null
  }
  const today = ft(given.asOf)
  return today !== null && today !== ft(day)
}

const isPart = ({ kind }: Kept): boolean => kind === 'tank' || (kind !== 'house' && isAbsorption(kind))
const isWell = ({ kind }: Kept): boolean => kind === 'well'
const partsOnRecord = (given: Case): readonly Kept[] => keptOnRecord(given).filter(isPart)
const partsThere = (given: Case): readonly Kept[] => [
  ...partsOnRecord(given),
  ...keptFound(given).filter(isPart),
]
const wellsOnRecord = (given: Case): readonly Kept[] => keptOnRecord(given).filter(isWell)
const wellsFound = (given: Case): readonly Kept[] => keptFound(given).filter(isWell)
const today = (_: Kept, { asOf }: Case): PartialDate => asOf
const whenPermitted = ({ built }: Kept): PartialDate | null => (built ? permitDate(built) : null)

/** The law of the permit's day. */
export const setback = asking({
  id: 'setback',
  raises: 'setback-short',
  facet: null,
  name: 'setbacks',
  to: 'private-well',
  on: whenPermitted,
  parts: partsOnRecord,
  others: wellsOnRecord,
})

/** Today's law, where it requires another distance; of a part that no permit shows, the only one there is. */
export const setbackToday = asking({
  id: 'setback-today',
  raises: 'setback-short',
  facet: 'today',
  name: 'setbacks',
  to: 'private-well',
  occasion: 'today',
  on: today,
  parts: (given) => partsThere(given).filter((kept) => otherToday(kept, given)),
  others: wellsOnRecord,
})

/** The wall that the ties run from is a wall of the building; its other walls lie behind it. */
export const buildingSetback = asking({
  id: 'building-setback',
  raises: 'setback-short',
  facet: null,
  name: 'setbacks',
  to: 'building',
  on: whenPermitted,
  parts: partsOnRecord,
  others: houseWall,
})

/** A well that no permit shows was drilled since: it has to keep today's distance from what was there before it. */
export const wellSince = asking({
  id: 'well-since',
  raises: 'setback-short',
  facet: 'a well drilled since',
  name: 'setbacks',
  to: 'private-well',
  on: today,
  parts: partsThere,
  others: wellsFound,
})

/** A lender's program asks by its own table, on the day of the question; what the county accepts it may not. */
export const lenderSetback = asking({
  id: 'lender-setback',
  raises: 'lender-distance-short',
  facet: null,
  name: 'setbacks.lender',
  to: 'private-well',
  on: today,
  parts: partsThere,
  others: (given) => [...wellsOnRecord(given), ...wellsFound(given)],
})

const RANK = { 'falls-short': 0, 'too-close-to-call': 1, suffices: 2 } as const
const isWorse = ({ value: a }: Worked<SetbackAnswer>, { value: b }: Worked<SetbackAnswer>): boolean =>
  RANK[a.verdict] < RANK[b.verdict] || (a.verdict === b.verdict && a.nearest.value < b.nearest.value)

/** Of many, the five that lie nearest are asked in full: what lies beyond those can't be the one that it stands worst with. */
function nearestOf(placed: readonly Placed[], here: Sited): readonly Placed[] {
  if (placed.length <= FEW) return placed
  return placed
    .map((it) => ({ it, ft: nominallyApart(here.body, it.sited.body) }))
    .sort((a, b) => a.ft - b.ft)
    .slice(0, FEW)
    .map(({ it }) => it)
}
const FEW = 5

type Placed = { readonly part: Part; readonly sited: Sited }

/** Those that something places, with the names of those that nothing does. */
function placed(
  others: readonly Kept[],
  kept: Kept,
  given: Case,
): Fact<{ readonly placed: NonEmpty<Placed>; readonly unplaced: readonly Part[] }> {
  const asked = others.map((it) => ({ part: partOf(it), fact: placeOf(it, given, kept) }))
  const found: Placed[] = []
  const exhibits: Exhibit[] = []
  for (const { part, fact } of asked) {
    if (fact.state !== 'known') continue
    found.push({ part, sited: fact.value })
    exhibits.push(...fact.exhibits)
  }
  const unplaced = asked.filter(({ fact }) => fact.state !== 'known').map(({ part }) => part)
  return isNonEmpty(found) ? known({ placed: found, unplaced }, ...exhibits) : (asked[0]!.fact as Fact<never>)
}
