import { isBy } from '../../base/partial-date.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { goodUntil } from '../../reconcile/good-until.ts'
import { type Standing, statusOf } from '../../reconcile/status.ts'
import type { Tx } from '../../store/database/database.ts'
import { type Decision, decisionsInForce } from '../../store/decisions.ts'
import { discrepanciesOf, type StandingDiscrepancy } from '../../store/discrepancies.ts'
import { type DerivedStatus, writeStatus } from '../../store/statuses.ts'

/** Derives a parcel's status anew from what stands and what was decided, and keeps it where agents can read it. */
export async function deriveStatus(
  tx: Tx,
  county: string,
  parcel: string,
  input: ReconcileInput,
  at: Date,
): Promise<DerivedStatus> {
  const [discrepancies, decisions] = await Promise.all([
    discrepanciesOf(tx, county, parcel),
    decisionsInForce(tx, county, parcel),
  ])
  const derived = statusFrom(parcel, input, { discrepancies, decisions }, at)
  await writeStatus(tx, county, derived)
  return derived
}

/** The status that follows from what stands on a parcel and what was decided about it. */
export function statusFrom(
  parcel: string,
  input: ReconcileInput,
  {
    discrepancies,
    decisions,
  }: { readonly discrepancies: readonly StandingDiscrepancy[]; readonly decisions: readonly Decision[] },
  at: Date,
): DerivedStatus {
  const status = statusOf({
    hasApprovedPermit: input.permits.some(
      ({ record }) => record.approvedOn !== null && isBy(record.approvedOn, input.asOf) !== false,
    ),
    hasInspection: input.findings !== null,
    standing: discrepancies.flatMap((it) => standingOf(it, decisions)),
    decidedBefore: discrepancies.some(
      ({ state, severity, decision }) => state === 'vanished' && severity !== 'note' && decision !== null,
    ),
  })
  return { parcel, status: { ...status, asOf: input.asOf }, goodUntil: goodUntil(input), derivedAt: at }
}

function standingOf(it: StandingDiscrepancy, decisions: readonly Decision[]): Standing[] {
  if (it.state === 'vanished') return []
  const decision = decisions.find(({ id }) => id === it.decision)
  return [
    {
      discrepancy: it.body,
      decided: it.state === 'decided' && decision ? decision.action : null,
    },
  ]
}
