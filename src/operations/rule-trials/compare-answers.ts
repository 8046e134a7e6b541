import { evidenceOf } from '../../reconcile/evidence.ts'
import type { DiscrepancyKind } from '../../reconcile/kinds.ts'
import type { Discrepancy, Reconciliation } from '../../reconcile/reconcile.ts'
import { hashOf } from '../../store/canonical.ts'

/** What is other about one difference: it is there only under the other rules, only under these, or says something else. */
export type AnswerChange = {
  readonly change: 'appears' | 'vanishes' | 'changes'
  readonly kind: DiscrepancyKind
  readonly about: string
  /** What is said under the rules in force; null where nothing is. */
  readonly inForce: string | null
  /** What would be said under the proposed ones. */
  readonly proposed: string | null
}

/** The differences that two answers for one parcel differ in, those that would be there first. */
export function compareAnswers(now: Reconciliation, would: Reconciliation): readonly AnswerChange[] {
  const [before, after] = [byKey(now), byKey(would)]
  const changes: AnswerChange[] = []
  for (const [key, it] of after) {
    const old = before.get(key)
    if (!old) changes.push(told('appears', it, null, it))
    else if (ground(old, now) !== ground(it, would)) changes.push(told('changes', it, old, it))
  }
  for (const [key, it] of before) if (!after.has(key)) changes.push(told('vanishes', it, it, null))
  return changes
}

const byKey = ({ discrepancies }: Reconciliation) => new Map(discrepancies.map((it) => [it.key, it]))

const ground = (it: Discrepancy, { asOf }: Reconciliation): string =>
  `${it.severity} ${hashOf(evidenceOf(it, asOf))}`

const told = (
  change: AnswerChange['change'],
  { kind, outcome }: Discrepancy,
  now: Discrepancy | null,
  would: Discrepancy | null,
): AnswerChange => ({
  change,
  kind,
  about: outcome.subject.label,
  inForce: now?.outcome.because ?? null,
  proposed: would?.outcome.because ?? null,
})
