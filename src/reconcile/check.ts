import type { PlainDate } from '../base/plain-date.ts'
import type { Step } from '../measure/step.ts'
import type { Citation } from '../rules/citation.ts'
import { type InForce, inForce } from '../rules/in-force.ts'
import { PARAMETERS, type ParameterName } from '../rules/parameters.ts'
import type { Case } from './case.ts'
import type { Fact } from './fact.ts'
import type { DiscrepancyKind } from './kinds.ts'
import type { Certainty, Exhibit, Outcome, Settle, Subject, Verdict } from './outcome.ts'

/** What a check says once all it needs is known. */
export type Decision = {
  readonly verdict: Verdict
  readonly raises: DiscrepancyKind | null
  readonly because: string
  readonly certainty: Certainty
  readonly steps?: readonly Step[]
  readonly exhibits?: readonly Exhibit[]
  readonly wouldSettle?: Settle | null
  /** Of a rule that the check looked up itself; those of `rules` are added by the runner. */
  readonly citations?: readonly Citation[]
}

type RuleNeed<S> = {
  readonly name: ParameterName
  /** The day whose law is asked for; null where that day is not on record. */
  readonly on: (subject: S, given: Case) => PlainDate | null
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
  readonly question: string
  readonly raises: readonly DiscrepancyKind[]
  readonly run: (given: Case) => readonly Outcome[]
}

/**
 * A check: its question, what it is about, the facts and rules it needs, and a decision that sees only known facts and
 * rules in force. What is lacking, doubtful or out of force is answered here, once, for all checks.
 */
export function check<
  S,
  const F extends { readonly [name: string]: (subject: S, given: Case) => Fact<unknown> },
  const R extends { readonly [name: string]: RuleNeed<S> },
>(definition: {
  readonly id: string
  readonly question: string
  readonly raises: readonly DiscrepancyKind[]
  readonly subjects: (given: Case) => readonly S[]
  readonly about: (subject: S, given: Case) => Subject
  readonly facet?: (subject: S) => string | null
  readonly facts: F
  readonly rules: R
  readonly decide: (facts: Known<F>, rules: Resolved<R>, subject: S, given: Case) => Decision
}): Check {
  const { id, question, raises } = definition
  return {
    id,
    question,
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
      question,
      subject: definition.about(subject, given),
      facet: definition.facet?.(subject) ?? null,
    }
    const undecided = (verdict: Verdict, because: string, citations: Outcome['citations'] = []): Outcome => ({
      ...base,
      verdict,
      raises: null,
      because,
      certainty: { word: 'open', because },
      exhibits,
      steps: [],
      citations,
      wouldSettle: null,
    })
    const asides = facts.flatMap(([, fact]) => (fact.state === 'beside' ? [fact.why] : []))
    if (asides.length > 0) return undecided('does-not-apply', asides.join('; '))
    const gaps = facts.flatMap(([, fact]) =>
      fact.state === 'lacking' || fact.state === 'doubtful' ? [fact.what] : [],
    )
    if (gaps.length > 0) return undecided('cannot-tell', gaps.join('; '))

    const rules = Object.entries(definition.rules).map(
      ([name, need]) => [name, need, lookUp(need, subject, given)] as const,
    )
    const missing = rules.flatMap(([, need, answer]) =>
      answer.state === 'in-force' || need.optional ? [] : [outOfForce(need.name, answer)],
    )
    if (missing.length > 0) return undecided('cannot-tell', missing.join('; '))
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
      because: decision.because,
      certainty: decision.certainty,
      exhibits: [...exhibits, ...(decision.exhibits ?? [])],
      steps: decision.steps ?? [],
      citations: [
        ...rules.flatMap(([, { name }, answer]) =>
          answer.state === 'in-force' ? answer.citations.map((it) => named(it, name)) : [],
        ),
        ...(decision.citations ?? []),
      ],
      wouldSettle: decision.wouldSettle ?? null,
    }
  }

  function lookUp(need: RuleNeed<S>, subject: S, given: Case): InForce<ParameterName> | { state: 'undated' } {
    const date = need.on(subject, given)
    return date === null ? { state: 'undated' } : inForce(given.book, given.county, need.name, date)
  }
}

/** What has no source stands among the rules with what it is about, so that it is not taken for part of the code. */
const named = (it: Citation, name: ParameterName): Citation =>
  it.verified === 'common-practice' && it.covers === null
    ? { ...it, covers: PARAMETERS[name].meaning.split(',')[0]! }
    : it

function outOfForce(name: ParameterName, answer: InForce<ParameterName> | { state: 'undated' }): string {
  const subject = PARAMETERS[name].meaning.split(',')[0]!
  switch (answer.state) {
    case 'in-force':
      return ''
    case 'undated':
      return `the day whose rule on ${subject} governs is not on record`
    case 'not-yet':
      return `no rule on ${subject} was in force yet; the first began on ${answer.from}`
    case 'ended':
      return `the rule on ${subject} had ended on ${answer.until}`
    case 'no-record':
      return `this county’s packs have no rule on ${subject}`
  }
}
