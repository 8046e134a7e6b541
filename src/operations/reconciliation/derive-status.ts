import { isBy } from '../../base/partial-date.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { goodUntil } from '../../reconcile/good-until.ts'
import { overSystems, type ParcelStatus, type Standing, statusOf } from '../../reconcile/status.ts'
import type { System } from '../../records/system.ts'
import type { Tx } from '../../store/database/database.ts'
import { type Decision, decisionsInForce } from '../../store/decisions.ts'
import { discrepanciesOf, type StandingDiscrepancy } from '../../store/discrepancies.ts'
import { type DerivedStatus, writeStatus } from '../../store/statuses.ts'

/** What stands on one system, and what was decided about it. */
export type SystemStanding = {
  readonly system: System
  readonly input: ReconcileInput
  readonly status: ParcelStatus
  readonly at: Date
}

export async function standingSystem(
  tx: Tx,
  county: string,
  system: System,
  input: ReconcileInput,
  at: Date,
): Promise<SystemStanding> {
  const [discrepancies, decisions] = await Promise.all([
    discrepanciesOf(tx, county, system.id),
    decisionsInForce(tx, county, system.id),
  ])
  return { system, input, status: systemStatus(input, { discrepancies, decisions }), at }
}

/**
 * Derives the status of each parcel anew from what stands on the systems that serve it or lie on it, and keeps it where
 * agents can read it. `standings` has every system of theirs.
 */
export async function deriveStatuses(
  tx: Tx,
  county: string,
  parcels: readonly string[],
  standings: readonly SystemStanding[],
): Promise<ReadonlyMap<string, DerivedStatus>> {
  const derived = new Map<string, DerivedStatus>()
  for (const parcel of parcels) {
    const own = standings.filter(({ system }) => system.parcels.some((it) => it.parcel === parcel))
    const status = parcelStatus(parcel, own)
    await writeStatus(tx, county, status)
    derived.set(parcel, status)
  }
  return derived
}

/** Of the systems on a parcel, the parcel's own first. */
export function parcelStatus(parcel: string, standings: readonly SystemStanding[]): DerivedStatus {
  const first = standings.toSorted(
    (a, b) =>
      Number(b.system.id === parcel) - Number(a.system.id === parcel) || (a.system.id < b.system.id ? -1 : 1),
  )
  const { asOf } = first[0]!.input
  const ends = first.flatMap(({ input }) => goodUntil(input) ?? []).sort()
  return {
    parcel,
    status: {
      ...overSystems(
        parcel,
        first.map(({ input, ...it }) => ({ ...it, inspected: input.findings !== null })),
      ),
      asOf,
    },
    goodUntil: ends[0] ?? null,
    derivedAt: new Date(Math.max(...first.map(({ at }) => at.getTime()))),
  }
}

/** The status that follows from what stands on a system and what was decided about it. */
export function systemStatus(
  input: ReconcileInput,
  {
    discrepancies,
    decisions,
  }: { readonly discrepancies: readonly StandingDiscrepancy[]; readonly decisions: readonly Decision[] },
): ParcelStatus {
  return statusOf({
    hasApprovedPermit: input.permits.some(
      ({ record }) => record.approvedOn !== null && isBy(record.approvedOn, input.asOf) !== false,
    ),
    hasInspection: input.findings !== null,
    standing: discrepancies.flatMap((it) => standingOf(it, decisions)),
    decidedBefore: discrepancies.some(
      ({ state, severity, decision }) => state === 'vanished' && severity !== 'note' && decision !== null,
    ),
  })
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
