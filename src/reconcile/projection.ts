import { AWAITS, type DecisionAction } from '../records/decision.ts'

/** `ground-moved`: it was decided, and what the decision rests on has changed since. */
export const DISCREPANCY_STATES = ['open', 'decided', 'ground-moved', 'vanished'] as const
export type DiscrepancyState = (typeof DISCREPANCY_STATES)[number]

export const DISCREPANCY_CHANGES = ['appeared', 'changed', 'vanished', 'returned'] as const
export type DiscrepancyChange = (typeof DISCREPANCY_CHANGES)[number]

/** The decision in force on a discrepancy. */
export type DecisionInForce = {
  readonly action: DecisionAction
  /** Of what it rested on. */
  readonly evidenceHash: string
  /** Findings were submitted after it. */
  readonly inspectedSince: boolean
}

/** A discrepancy as it stood before a run. */
export type Stood = {
  readonly key: string
  readonly state: DiscrepancyState
  readonly evidenceHash: string
  readonly decision: DecisionInForce | null
}

/** One that the run raised. */
export type Raised = { readonly key: string; readonly evidenceHash: string }

export type Projected = {
  readonly key: string
  readonly state: DiscrepancyState
  readonly change: DiscrepancyChange | null
}

/**
 * What a run makes of the discrepancies of a parcel: those it raised, in its order, then those it no longer raises.
 * Decisions stay; each says whether its ground has moved.
 */
export function project(before: readonly Stood[], raised: readonly Raised[]): readonly Projected[] {
  const known = new Map(before.map((stood) => [stood.key, stood]))
  const now = new Set(raised.map(({ key }) => key))
  return [
    ...raised.map((it) => standingNow(known.get(it.key), it)),
    ...before.filter(({ key }) => !now.has(key)).map(gone),
  ]
}

function standingNow(stood: Stood | undefined, { key, evidenceHash }: Raised): Projected {
  if (!stood) return { key, state: 'open', change: 'appeared' }
  const returned = stood.state === 'vanished'
  const changed = stood.evidenceHash !== evidenceHash
  return {
    key,
    state: stateAfter(stood.decision, evidenceHash, returned),
    change: returned ? 'returned' : changed ? 'changed' : null,
  }
}

const gone = ({ key, state }: Stood): Projected => ({
  key,
  state: 'vanished',
  change: state === 'vanished' ? null : 'vanished',
})

/**
 * The ground of a decision has moved when its evidence has; when what it asked for has come and the difference is
 * still there; and when what it had made go away is back.
 */
export function stateAfter(
  decision: DecisionInForce | null,
  evidenceHash: string,
  returned: boolean,
): Exclude<DiscrepancyState, 'vanished'> {
  if (decision === null) return 'open'
  if (decision.evidenceHash !== evidenceHash) return 'ground-moved'
  if (returned && decision.action !== 'accept') return 'ground-moved'
  return AWAITS[decision.action] === 'firm' && decision.inspectedSince ? 'ground-moved' : 'decided'
}
