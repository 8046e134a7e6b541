import { isNonEmpty, type NonEmpty } from '../../base/non-empty.ts'
import type { PartialDate } from '../../base/partial-date.ts'
import { setback as keeps, nominallyApart, type SetbackAnswer } from '../../geometry/setback/setback.ts'
import { compareWithMinimum } from '../../measure/compare.ts'
import { type Worked, worked } from '../../measure/step.ts'
import type { Part } from '../../records/part.ts'
import { setbackSpan } from '../../rules/apply/setback-span.ts'
import { derived, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import { AGAINST_LEAST, type Occasion } from '../asked-of-code.ts'
import type { Case } from '../case.ts'
import { type Check, check } from '../check.ts'
import { type Fact, known, lacking } from '../fact.ts'
import { type DistanceBy, KEPT_FROM } from '../kept-from.ts'
import type { DiscrepancyKind } from '../kinds.ts'
import type { Exhibit } from '../outcome.ts'
import { exactly, measured } from '../quantity.ts'
import { type Apart, isAsked, isThere, rowOf, type SetbackRule } from './asked-apart.ts'
import { type DirectDistance, isStated, statedFact, tapedAcross, tapedFact } from './direct-distance.ts'
import { type Kept, partOf, placeOf, type Sited } from './kept-apart.ts'

type Asking = {
  readonly id: string
  readonly raises: DiscrepancyKind
  /** Tells questions of one check about one part apart. */
  readonly facet: (subject: Apart) => string | null
  readonly name: SetbackRule
  readonly occasion?: Occasion
  readonly on: (kept: Kept, given: Case) => PartialDate | null
  readonly subjects: (given: Case) => readonly Apart[]
  /** What of that kind has a place on record, or was found. */
  readonly others: (subject: Apart, given: Case) => readonly Kept[]
  /** Whether the inspection's tape is to what is asked of. */
  readonly isTaped?: (subject: Apart, given: Case) => boolean
}

/**
 * Horizontal distance, outline to outline, from a part to what it has to keep away from. The inspection's tape across decides
 * by itself. Without one, what the permit states and where the two lie are both asked, of each that has a place: one
 * answer, for the one that it stands worst with.
 */
export function setbackAsking({
  id,
  raises,
  facet,
  name,
  occasion,
  on,
  subjects,
  others,
  isTaped,
}: Asking): Check {
  const taped = (subject: Apart, given: Case): boolean =>
    tapedAcross(subject.kept, subject.from) !== null && (isTaped?.(subject, given) ?? true)

  function directly(subject: Apart, given: Case): Fact<DirectDistance | null> {
    const { kept, from } = subject
    const isTape = taped(subject, given)
    if (!isTape && !isStated(kept, from))
      return others(subject, given).length > 0
        ? known(null)
        : lacking({ gap: 'no-distance', part: partOf(kept), from })
    const fact = isTape
      ? tapedFact(kept.found!, kept, from, given)
      : statedFact(kept.built!, kept, from, given)
    return fact.state === 'known'
      ? known({ ft: fact.value, by: isTape ? 'taped' : 'stated' }, ...fact.exhibits)
      : fact
  }

  /** Places are asked where no tape decides; what nothing places is no gap where the permit says how far it is. */
  function byPlace<T>(subject: Apart, given: Case, fact: () => Fact<T>): Fact<T | null> {
    if (taped(subject, given) || others(subject, given).length === 0) return known(null)
    const place = fact()
    return place.state !== 'known' &&
      directly(subject, given).state === 'known' &&
      isStated(subject.kept, subject.from)
      ? known(null)
      : place
  }

  return check({
    id,
    raises: [raises],
    subjects: (given: Case): readonly Apart[] =>
      subjects(given).filter(
        (apart) => isThere(apart, others(apart, given)) && isAsked(apart, name, on(apart.kept, given), given),
      ),
    about: ({ kept }) => partOf(kept),
    facet,
    facts: {
      direct: directly,
      here: (subject: Apart, given: Case) => byPlace(subject, given, () => placeOf(subject.kept, given)),
      there: (subject: Apart, given: Case) =>
        byPlace(subject, given, () => placed(others(subject, given), subject.kept, given)),
    },
    rules: { table: { name, on: ({ kept }: Apart, given: Case) => on(kept, given) } },
    decide({ direct, here, there }, { table }, { kept, from }) {
      const required = setbackSpan(table, rowOf(kept) ?? 'tank', KEPT_FROM[from].to)
      if (!required.ok) {
        const { narrower: _, ...silence } = required.error
        return {
          verdict: 'does-not-apply',
          raises: null,
          reason: { is: 'no-rule', rules: [{ state: 'silent', rule: name, silence }] },
          certainty: open('undecided'),
        }
      }
      const { mildest, strictest } = required.value
      const ask = (least: number): Candidate =>
        [
          ...(direct ? [across(direct, least)] : []),
          ...(here && there
            ? nearestOf(there.placed, here).map(
                ({ part, sited }): Candidate => ({
                  how: 'placed',
                  part,
                  sited,
                  answer: keeps(here.body, sited.body, least),
                }),
              )
            : []),
        ].reduce((best, other) => (isWorse(other.answer, best.answer) ? other : best))
      const strict = ask(strictest)
      const { how, part, sited, answer } =
        strict.answer.value.verdict === 'suffices' || mildest === strictest ? strict : ask(mildest)
      const { verdict, nearest, farthest, ambiguous, requiredFt } = answer.value
      if (requiredFt < strictest && verdict !== 'falls-short') {
        // Far enough for one of what it may be, and not for another.
        const silence = {
          reason: 'which-row',
          table: table.value.table,
          given: required.value.steps[0]!.numbers,
          among: [],
        } as const
        return {
          verdict: 'cannot-tell',
          raises: null,
          reason: { is: 'no-rule', rules: [{ state: 'silent', rule: name, silence }] },
          certainty: open('undecided'),
        }
      }
      const span = farthest.value - nearest.value > 1 / 24
      const unsized = how === 'placed' && here?.body.extent.kind === 'unknown'
      const told = span && (unsized || verdict === 'falls-short') ? farthest : nearest
      return {
        verdict,
        raises: verdict === 'falls-short' ? raises : null,
        reason: {
          is: 'setback',
          from: part,
          how,
          distance: measured(told, 'ft'),
          span: !span ? null : unsized ? 'size-unknown' : told === farthest ? 'at-most' : 'at-least',
          least: exactly(requiredFt, 'ft'),
          source: sourceOf(table),
          to: from,
          ...(occasion ? { occasion } : {}),
          ...(name === 'setbacks.lender' ? { by: 'lender' as const } : {}),
          ambiguous,
          unplaced: there?.unplaced ?? [],
          comes: AGAINST_LEAST[verdict],
        },
        certainty:
          verdict === 'too-close-to-call' || ambiguous
            ? open('place-not-known')
            : table.verified === 'from-memory'
              ? likely('rule-not-verified')
              : how === 'stated'
                ? likely('as-stated')
                : firm('beyond-uncertainty'),
        exhibits: [
          derived('distance', measured(told, 'ft'), part),
          requiredBy('distance', exactly(requiredFt, 'ft'), table, part),
        ],
        steps: [
          ...(how === 'placed' ? (here?.steps ?? []) : []),
          ...(sited?.steps ?? []),
          ...required.value.steps,
          ...answer.steps,
        ],
      }
    },
  })
}

type Candidate = {
  readonly how: DistanceBy
  readonly part: Part | null
  readonly sited: Sited | null
  readonly answer: Worked<SetbackAnswer>
}

/** A distance taped or stated is one figure, from edge to edge already. */
function across({ ft, by }: DirectDistance, least: number): Candidate {
  const compared = compareWithMinimum(ft, least, 'ft')
  const { verdict } = compared.value
  const value = { verdict, nearest: ft, farthest: ft, requiredFt: least, ambiguous: false }
  return { how: by, part: null, sited: null, answer: worked(value, () => compared.steps) }
}

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
type There = { readonly placed: NonEmpty<Placed>; readonly unplaced: readonly Part[] }

/** Those that something places, with the names of those that nothing does. */
function placed(others: readonly Kept[], kept: Kept, given: Case): Fact<There> {
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
