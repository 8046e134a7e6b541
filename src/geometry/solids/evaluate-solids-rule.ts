import { expandedSteps, printU } from '../../measure/expanded-steps.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { expanded, type Uncertain } from '../../measure/uncertain.ts'
import { type Derived, deriveSolids } from './derive-solids.ts'
import { sludgeLimit } from './sludge-limit.ts'
import { SOLIDS_DISTANCES, SOLIDS_SHARE, type SolidsReadings } from './solids-readings.ts'
import type { SolidsCondition, SolidsRule, SolidsVerdict } from './solids-rule.ts'

/** One condition, asked. `found` and `limit` are inches or percent as the condition counts; `lacking` is why not. */
export type ConditionAnswer = {
  readonly condition: SolidsCondition
  readonly verdict: SolidsVerdict
  readonly found: Uncertain | null
  readonly limit: number | null
  readonly lacking: readonly string[]
}

export type SolidsAnswer = {
  readonly rule: string
  readonly verdict: SolidsVerdict
  readonly conditions: readonly ConditionAnswer[]
}

/**
 * A rule asked of an inspection's readings. A condition "at most x" is `due` when found + U ≤ x, `not-due` when
 * found − U > x, between them `too-close-to-call`; "above x" the same way round the other side; with a reading
 * lacking, or a tank the table does not cover, `cannot-tell`. Any condition that is due makes the rule due; then any
 * that is too close, then any that can't be told, decides: silence is never taken for "not due".
 */
export function evaluateSolidsRule(
  rule: SolidsRule,
  readings: SolidsReadings,
  nominalGal: number | null = null,
): Worked<SolidsAnswer> {
  const asked = rule.anyOf.map((condition) => ask(condition, readings, nominalGal))
  const verdicts = asked.map(({ answer }) => answer.verdict)
  const order: readonly SolidsVerdict[] = ['due', 'too-close-to-call', 'cannot-tell', 'not-due']
  const verdict = order.find((candidate) => verdicts.includes(candidate))!
  const answer = { rule: rule.id, verdict, conditions: asked.map((one) => one.answer) }
  return worked(answer, () => [
    ...asked.flatMap(({ write }) => write()),
    {
      says: `${rule.name}: pump when any of these holds`,
      formula: 'any of',
      numbers: verdicts.join(', '),
      result: verdict,
    },
  ])
}

/** Readings in inches come back from feet a rounding error off: what meets a limit to a billionth of an inch meets it. */
const ROUNDING = 1e-9

type Asked = { readonly answer: ConditionAnswer; readonly write: () => readonly Step[] }

function ask(condition: SolidsCondition, readings: SolidsReadings, nominalGal: number | null): Asked {
  switch (condition.when) {
    case 'distance-at-most':
      return atMost(condition, deriveSolids(readings, SOLIDS_DISTANCES[condition.distance]), condition.inches)
    case 'sludge-distance-at-most-by-tank': {
      const limit = sludgeLimit(condition.rows, nominalGal, readings.liquidDepth?.value ?? null)
      if (!limit.ok) return cannotTell(condition, [limit.error])
      const asked = atMost(
        condition,
        deriveSolids(readings, SOLIDS_DISTANCES['sludge-top-to-outlet-bottom']),
        limit.value.value,
      )
      return { ...asked, write: () => [...limit.value.steps, ...asked.write()] }
    }
    case 'share-above':
      return above(condition, deriveSolids(readings, SOLIDS_SHARE), condition.pct)
  }
}

function atMost(condition: SolidsCondition, derived: Derived, limit: number): Asked {
  if (!derived.known) return cannotTell(condition, derived.lacking)
  const found = derived.worked.value
  const U = expanded(found)
  const verdict =
    found.value + U <= limit + ROUNDING
      ? 'due'
      : found.value - U > limit + ROUNDING
        ? 'not-due'
        : 'too-close-to-call'
  return told(condition, derived.worked, limit, verdict, AT_MOST[verdict], 'in')
}

function above(condition: SolidsCondition, derived: Derived, limit: number): Asked {
  if (!derived.known) return cannotTell(condition, derived.lacking)
  const found = derived.worked.value
  const U = expanded(found)
  const verdict =
    found.value - U > limit + ROUNDING
      ? 'due'
      : found.value + U <= limit + ROUNDING
        ? 'not-due'
        : 'too-close-to-call'
  return told(condition, derived.worked, limit, verdict, ABOVE[verdict], '%')
}

type Test = 'found + U ≤ limit' | 'found − U > limit' | 'found − U ≤ limit < found + U'
type Decided = Exclude<SolidsVerdict, 'cannot-tell'>

/** The inequality that decides, as it holds. */
const AT_MOST = {
  due: 'found + U ≤ limit',
  'not-due': 'found − U > limit',
  'too-close-to-call': 'found − U ≤ limit < found + U',
} as const satisfies { readonly [V in Decided]: Test }
const ABOVE = {
  due: 'found − U > limit',
  'not-due': 'found + U ≤ limit',
  'too-close-to-call': 'found − U ≤ limit < found + U',
} as const satisfies { readonly [V in Decided]: Test }

function told(
  condition: SolidsCondition,
  { value: found, steps }: Worked<Uncertain>,
  limit: number,
  verdict: Decided,
  formula: Test,
  unit: string,
): Asked {
  const [f, U, l] = [n(found.value), printU(found), `${n(limit)} ${unit}`]
  const numbers = {
    'found + U ≤ limit': `${f} + ${U} ≤ ${l}`,
    'found − U > limit': `${f} − ${U} > ${l}`,
    'found − U ≤ limit < found + U': `${f} − ${U} ≤ ${n(limit)} < ${f} + ${U} ${unit}`,
  }[formula]
  const says = 'Against the limit, with U (k = 2)'
  return {
    answer: { condition, verdict, found, limit, lacking: [] },
    write: () => [...steps, ...expandedSteps(found, unit), { says, formula, numbers, result: verdict }],
  }
}

const cannotTell = (condition: SolidsCondition, lacking: readonly string[]): Asked => ({
  answer: { condition, verdict: 'cannot-tell', found: null, limit: null, lacking },
  write: () => [
    {
      says: 'A condition that can’t be told',
      formula: 'lacking',
      numbers: lacking.join(', '),
      result: 'cannot-tell',
    },
  ],
})
