import { inFull, type SaidOnce, sayOnce } from '../base/say-once.ts'
import type { AsBuilt } from '../records/as-built.ts'
import type { Outcome } from './outcome.ts'
import { type Discrepancy, discrepanciesOf, type Reconciliation } from './reconcile.ts'

/**
 * An answer without what its inputs give again: the as-built is their fold and the steps are arithmetic on the exhibits.
 * `full` brings both back.
 */
export type Answer = Omit<Reconciliation, 'asBuilt'>

/** As an answer is stored: outcomes without working, discrepancies by their outcome alone, each thing said once. */
export function keptForm({ asOf, findings, outcomes, advice }: Answer): SaidOnce {
  return sayOnce({
    asOf,
    findings,
    outcomes: outcomes.map(({ steps: _, ...outcome }) => outcome),
    advice,
  })
}

/** The stored form read back. Severity and next step follow from the outcomes by the switches of this version. */
export function answerOf(stored: SaidOnce): Answer {
  const { outcomes, ...rest } = inFull(stored) as Omit<Answer, 'outcomes' | 'discrepancies'> & {
    readonly outcomes: readonly Omit<Outcome, 'steps'>[]
  }
  const whole = outcomes.map((outcome): Outcome => ({ ...outcome, steps: [] }))
  return { ...rest, outcomes: whole, discrepancies: discrepanciesOf(whole) }
}

/** With the as-built that it was made of; its working stays away. */
export const full = (answer: Answer, asBuilt: AsBuilt): Reconciliation => ({ ...answer, asBuilt })

/** A difference without its working, as it is kept beside the answer that raised it. */
export const withoutWorking = (it: Discrepancy): Discrepancy => ({
  ...it,
  outcome: { ...it.outcome, steps: [] },
})
