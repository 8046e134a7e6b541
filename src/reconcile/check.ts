import { isNonEmpty } from '../base/non-empty.ts'
import type { Days, PartialDate } from '../base/partial-date.ts'
import type { Step } from '../measure/step.ts'
import type { Part } from '../records/part.ts'
import type { Citation } from '../rules/citation.ts'
import type { InForce } from '../rules/in-force.ts'
import { type DayUnclear, inForceThroughout } from '../rules/in-force-throughout.ts'
import type { ParameterName } from '../rules/parameters.ts'
import type { Case } from './case.ts'
import type { Fact } from './fact.ts'
import type { RuleGap } from './gap.ts'
import type { DiscrepancyKind } from './kinds.ts'
import type { Certainty, Exhibit, Outcome, Settle, Verdict } from './outcome.ts'
import type { Reason } from './reason.ts'

/** What a check says once all it needs is known. */
export type Decision = {
  readonly verdict: Verdict
  readonly raises: DiscrepancyKind | null
  readonly reason: Reason
  readonly certainty: Certainty
  readonly steps?: readonly Step[]
  readonly exhibits?: readonly Exhibit[]
  readonly wouldSettle?: Settle | null
  /** Of a rule that the check looked up itself; those of `rules` are added by the runner. */
  readonly citations?: readonly Citation[]
  /** Of `rules`, those that this answer does not rest on: they are not cited. */
  readonly unasked?: readonly string[]
}

type RuleNeed<S> = {
  readonly name: ParameterName
  /** The day whose law is asked for; null where that day is not on record. */
  readonly on: (subject: S, given: Case) => PartialDate | Days | null
  /** A check that can decide without the rule says so; it then gets null. */
  readonly optional?: true
}

/** A rule that holds on the day asked for, with its citations. */
export type InForceNow<N extends ParameterName> = Extract<InForce<N>, { readonly state: 'in-force' }>

type Known<F> = { readonly [K in keyof F]: F[K] extends (...args: never[]) => Fact<infer T> ? T : never }
type Resolved<R> = {
  readonly [K in keyof R]: R[K] extends {
    readonly name: infer N extends ParameterName
    readonly optional: true
  }
    ? InForceNow<N> | null
    : R[K] extends { readonly name: infer N extends ParameterName }
      ? InForceNow<N>
      : never
}

/** One question, asked of every subject it has in a case. */
export type Check = {
  readonly id: string
  readonly raises: readonly DiscrepancyKind[]
  readonly run: (given: Case) => readonly Outcome[]
}

/**
 * A check: what it is about, the facts and rules it needs, and a decision that sees only known facts and
 * rules in force. What is lacking, doubtful or out of force is answered here, once, for all checks.
 */
export function check<
  S,
  const F extends { readonly [name: string]: (subject: S, given: Case) => Fact<unknown> },
  const R extends { readonly [name: string]: RuleNeed<S> },
>(definition: {
  readonly id: string
  readonly raises: readonly DiscrepancyKind[]
  readonly subjects: (given: Case) => readonly S[]
  readonly about: (subject: S, given: Case) => Part
  readonly facet?: (subject: S) => string | null
  readonly facts: F
  readonly rules: R
  readonly decide: (facts: Known<F>, rules: Resolved<R>, subject: S, given: Case) => Decision
}): Check {
  const { id, raises } = definition
  return {
    id,
    raises,
    run: (given) => definition.subjects(given).map((subject) => ask(subject, given)),
  }

  function ask(subject: S, given: Case): Outcome {
    const facts = Object.entries(definition.facts).map(
      ([name, fact]) => [name, fact(subject, given)] as const,
    )
    const exhibits = facts.flatMap(([, fact]) =>
      fact.state === 'known' || fact.state === 'doubtful' ? fact.exhibits : [],
    )
    const base = {
      check: id,
      subject: definition.about(subject, given),
      facet: definition.facet?.(subject) ?? null,
    }
    const undecided = (verdict: Verdict, reason: Reason): Outcome => ({
      ...base,
      verdict,
      raises: null,
      reason,
      certainty: { word: 'open', basis: 'undecided' },
      exhibits,
      steps: [],
      citations: [],
      wouldSettle: null,
    })
    const asides = facts.flatMap(([, fact]) => (fact.state === 'beside' ? [fact.aside] : []))
    if (isNonEmpty(asides)) return undecided('does-not-apply', { is: 'not-asked', asides })
    const gaps = facts.flatMap(([, fact]) =>
      fact.state === 'lacking' || fact.state === 'doubtful' ? [fact.gap] : [],
    )
    if (isNonEmpty(gaps)) return undecided('cannot-tell', { is: 'unknown', gaps })

    const rules = Object.entries(definition.rules).map(
      ([name, need]) => [name, need, lookUp(need, subject, given)] as const,
    )
    const missing = rules.flatMap(([, need, answer]) =>
      answer.state === 'in-force' || need.optional ? [] : [outOfForce(need.name, answer)],
    )
    if (isNonEmpty(missing)) return undecided('cannot-tell', { is: 'no-rule', rules: missing })
    const decision = definition.decide(
      Object.fromEntries(
        facts.map(([name, fact]) => [name, fact.state === 'known' ? fact.value : null]),
      ) as Known<F>,
      Object.fromEntries(
        rules.map(([name, , answer]) => [name, answer.state === 'in-force' ? answer : null]),
      ) as Resolved<R>,
      subject,
      given,
    )
    return {
      ...base,
      verdict: decision.verdict,
      raises: decision.raises,
      reason: decision.reason,
      certainty: decision.certainty,
      exhibits: [...exhibits, ...(decision.exhibits ?? [])],
      steps: decision.steps ?? [],
      citations: [
        ...rules.flatMap(([name, need, answer]) =>
          answer.state === 'in-force' && !decision.unasked?.includes(name)
            ? answer.citations.map((it) => ({ ...it, rule: need.name }))
            : [],
        ),
        ...(decision.citations ?? []).map((it) => ({ ...it, rule: null })),
      ],
      wouldSettle: decision.wouldSettle ?? null,
    }
  }

  function lookUp(need: RuleNeed<S>, subject: S, given: Case): Answer {
    const date = need.on(subject, given)
    return date === null ? { state: 'undated' } : inForceThroughout(given.book, given.county, need.name, date)
  }
}

type Answer = InForce<ParameterName> | DayUnclear | { readonly state: 'undated' }
type OutOfForce = Exclude<Answer, { readonly state: 'in-force' }>

function outOfForce(rule: ParameterName, answer: OutOfForce): RuleGap {
  switch (answer.state) {
    case 'undated':
    case 'no-record':
      return { state: answer.state, rule }
    case 'day-unclear':
      return { state: answer.state, rule, first: answer.first, last: answer.last }
    case 'not-yet':
      return { state: answer.state, rule, from: answer.from }
    case 'ended':
      return { state: answer.state, rule, until: answer.until }
  }
}
