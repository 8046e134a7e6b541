import type { Step } from '../../../../measure/step.ts'
import type { Exhibit, Outcome, Settle, Verdict } from '../../../../reconcile/outcome.ts'
import type { Citation } from '../../../../rules/citation.ts'
import type { Side } from './side.ts'

/** What a verdict rests on, opened under its line. */
export type Proof = {
  readonly question: string
  readonly certainty: string
  readonly exhibits: readonly Exhibit[]
  readonly steps: readonly Step[]
  readonly citations: readonly Citation[]
  readonly wouldSettle: Settle | null
}

/**
 * One line of the comparison. Two-sided: what the record says, the verdict, what was found. One-sided (`record` and
 * `found` null): a question that only the inspection or a rule can answer, told in its sentence.
 */
export type Line = {
  readonly what: string
  readonly record: Side | null
  readonly found: Side | null
  readonly verdict: Verdict | null
  readonly because: string | null
  readonly proof: Proof | null
  /** Key of the standing discrepancy that it raises. */
  readonly raises: string | null
}

export const proofOf = (outcome: Outcome): Proof => ({
  question: outcome.question,
  certainty: `${outcome.certainty.word}: ${outcome.certainty.because}`,
  exhibits: outcome.exhibits,
  steps: outcome.steps,
  citations: outcome.citations,
  wouldSettle: outcome.wouldSettle,
})

/** Record and inspection on one thing, with the verdict where a check gave one. */
export const twoSided = (
  what: string,
  record: Side,
  found: Side,
  outcome: Outcome | undefined,
  keyOf: (outcome: Outcome) => string | null,
): Line => ({
  what,
  record,
  found,
  verdict: outcome?.verdict ?? null,
  because: outcome && tells(outcome) ? outcome.because : null,
  proof: outcome ? proofOf(outcome) : null,
  raises: outcome ? keyOf(outcome) : null,
})

/** Where both sides stand side by side and agree, the sentence would only say it again. */
const tells = ({ verdict, raises }: Outcome): boolean => verdict !== 'agrees' || raises !== null

export const oneSided = (outcome: Outcome, keyOf: (outcome: Outcome) => string | null): Line => ({
  what: outcome.facet === null ? outcome.question : `${outcome.question} (${outcome.facet})`,
  record: null,
  found: null,
  verdict: outcome.verdict,
  because: outcome.because,
  proof: proofOf(outcome),
  raises: keyOf(outcome),
})
