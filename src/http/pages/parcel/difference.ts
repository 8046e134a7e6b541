import type { Actor } from '../../../reconcile/acts.ts'
import type { DiscrepancyKind, Severity } from '../../../reconcile/kinds.ts'
import type { Decision } from '../../../store/decisions.ts'
import type { StandingDiscrepancy } from '../../../store/discrepancies.ts'
import { actorOf, actWords } from '../../../words/acts.ts'
import { DECISION_WORDS } from '../../../words/decisions.ts'
import { discrepancyWords } from '../../../words/follow-up.ts'
import { titleOf } from '../../../words/titles.ts'
import { plain } from '../words/plain.ts'

/** A decision as a page shows it. */
export type DecisionShown = {
  readonly id: string
  readonly done: string
  readonly reason: string
  readonly asks: string | null
  /** `capacity set to 720 gal`, where it corrected the record. */
  readonly set: string | null
  readonly by: string
  readonly at: Date
}

/** A discrepancy that stands, under the line that raises it. */
export type Difference = {
  readonly id: string
  readonly key: string
  readonly revision: number
  readonly kind: DiscrepancyKind
  readonly severity: Severity
  /** `moved`: decided once, and what the decision rested on has changed since. */
  readonly standing: 'open' | 'decided' | 'moved'
  readonly about: string
  /** In the words for whoever reads the page. */
  readonly says: string
  readonly title: string
  readonly next: { readonly who: Actor; readonly what: string }
  readonly raisedAt: Date
  readonly decision: DecisionShown | null
  /** Those that it superseded, oldest first. */
  readonly earlier: readonly DecisionShown[]
}

export function presentDifference(
  it: StandingDiscrepancy,
  decisions: readonly Decision[],
  names: ReadonlyMap<string, string>,
  audience: 'reviewer' | 'firm',
): Difference {
  const about = decisions.filter(({ discrepancy }) => discrepancy === it.id)
  const inForce = about.find(({ id }) => id === it.decision)
  return {
    id: it.id,
    key: it.key,
    revision: it.revision,
    kind: it.kind,
    severity: it.severity,
    standing: it.state === 'ground-moved' ? 'moved' : it.state === 'decided' ? 'decided' : 'open',
    about: it.body.outcome.subject.label,
    title: titleOf(it.kind, it.body.outcome.subject, it.body.outcome.reason),
    says: discrepancyWords(it.body, audience),
    next: { who: actorOf(it.body), what: actWords(it.body, it.body.outcome.subject) },
    raisedAt: it.raisedAt,
    decision: inForce ? presentDecision(inForce, names) : null,
    earlier: about.filter(({ id }) => id !== inForce?.id).map((decision) => presentDecision(decision, names)),
  }
}

export const presentDecision = (
  { id, action, reason, asks, correction, decidedBy, decidedAt }: Decision,
  names: ReadonlyMap<string, string>,
): DecisionShown => ({
  id,
  done: DECISION_WORDS[action].done,
  reason,
  asks,
  set: correction && `${plainField(correction.field)} set to ${written(correction.written)}`,
  by: names.get(decidedBy) ?? 'a county reviewer',
  at: decidedAt,
})

const plainField = (field: string): string => field.replace(/[A-Z]/g, (sign) => ` ${sign.toLowerCase()}`)

function written(value: unknown): string {
  if (typeof value !== 'object' || value === null) return plain(String(value))
  const { a, b, side } = value as {
    readonly a?: unknown
    readonly b?: unknown
    readonly side?: string | null
  }
  return a !== undefined
    ? `A ${a}, B ${b}${side ? `, ${side === 'away' ? 'away from the house' : 'on the house side'}` : ''}`
    : JSON.stringify(value)
}
