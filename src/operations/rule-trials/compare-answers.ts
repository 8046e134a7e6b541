import { evidenceOf } from '../../reconcile/evidence.ts'
import type { Answer } from '../../reconcile/kept.ts'
import type { DiscrepancyKind } from '../../reconcile/kinds.ts'
import type { Discrepancy } from '../../reconcile/reconcile.ts'
import { hashOf } from '../../store/hash.ts'
import { reasonWords } from '../../words/reasons.ts'
import { sentence } from '../../words/sentence.ts'

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
export function compareAnswers(now: Answer, would: Answer): readonly AnswerChange[] {
  const [before, after] = [byKey(now), byKey(would)]
  const changes: AnswerChange[] = []
  for (const [key, it] of after) {
    const old = before.get(key)
    if (!old) changes.push(told('appears', it, null, it))
    else if (ground(old) !== ground(it)) changes.push(told('changes', it, old, it))
  }
  for (const [key, it] of before) if (!after.has(key)) changes.push(told('vanishes', it, it, null))
  return changes
}

const byKey = ({ discrepancies }: Answer) => new Map(discrepancies.map((it) => [it.key, it]))

const ground = (it: Discrepancy): string => `${it.severity} ${hashOf(evidenceOf(it))}`

const told = (
  change: AnswerChange['change'],
  { kind, outcome }: Discrepancy,
  now: Discrepancy | null,
  would: Discrepancy | null,
): AnswerChange => ({
  change,
  kind,
  about: outcome.subject.label,
  inForce: now && sentence(reasonWords(now.outcome)),
  proposed: would && sentence(reasonWords(would.outcome)),
})
