import type { Step } from '../../../../measure/step.ts'
import type { Exhibit, Outcome, RuleCited, Settle, Verdict } from '../../../../reconcile/outcome.ts'
import { certaintyWords } from '../../../../words/certainty.ts'
import { isKeptFrom } from '../../../../words/kept-from.ts'
import { questionWords } from '../../../../words/questions.ts'
import { reasonWords } from '../../../../words/reasons.ts'
import { sentence } from '../../../../words/sentence.ts'
import type { Side } from './side.ts'

/** What a verdict rests on, opened under its line. */
export type Proof = {
  readonly question: string
  /** Null where nothing was decided. */
  readonly certainty: string | null
  readonly exhibits: readonly Exhibit[]
  readonly steps: readonly Step[]
  readonly citations: readonly RuleCited[]
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
  question: questionWords(outcome.check, isKeptFrom(outcome.facet) ? outcome.facet : null),
  certainty: certaintyWords(outcome.certainty),
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
  because: outcome && tells(outcome) ? sentence(reasonWords(outcome)) : null,
  proof: outcome ? proofOf(outcome) : null,
  raises: outcome ? keyOf(outcome) : null,
})

/** Where both sides stand side by side and agree, the sentence would only say it again. */
const tells = ({ verdict, raises }: Outcome): boolean => verdict !== 'agrees' || raises !== null

export const oneSided = (outcome: Outcome, keyOf: (outcome: Outcome) => string | null): Line => ({
  what: questionWords(outcome.check, outcome.facet),
  record: null,
  found: null,
  verdict: outcome.verdict,
  because: sentence(reasonWords(outcome)),
  proof: proofOf(outcome),
  raises: keyOf(outcome),
})

/** One line each; the steps of the protocol that ask nothing of anybody are one question, and are told on one line. */
export function oneSidedAll(
  outcomes: readonly Outcome[],
  keyOf: (outcome: Outcome) => string | null,
): readonly Line[] {
  const steps = outcomes.filter(({ reason, raises }) => reason.is === 'protocol' && raises === null)
  const [first] = steps
  return outcomes.flatMap((outcome): readonly Line[] => {
    if (!first || !steps.includes(outcome)) return [oneSided(outcome, keyOf)]
    if (outcome !== first) return []
    const open = steps.find(({ verdict }) => verdict !== 'suffices')
    return [{ ...oneSided(open ?? first, keyOf), because: sentence(steps.map(reasonWords).join('; ')) }]
  })
}
