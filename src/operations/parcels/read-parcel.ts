import { ok } from '../../base/result.ts'
import type { AsBuilt } from '../../records/as-built.ts'
import type { System } from '../../records/system.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { discrepanciesOf, type StandingDiscrepancy } from '../../store/discrepancies.ts'
import { type Document, documentsOf } from '../../store/documents.ts'
import { type PermitElsewhere, permitsElsewhere } from '../../store/filing-changes.ts'
import { findingsOf } from '../../store/findings.ts'
import { organizationNames } from '../../store/organizations.ts'
import { type Alias, aliasesOf, type Parcel } from '../../store/parcels.ts'
import { type PermitOnFile, permitsOf } from '../../store/permits.ts'
import type { DatedStatus } from '../../store/statuses.ts'
import { systemsOf } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import type { FindingsRead } from '../findings/read-findings.ts'
import { type Answer, notFound } from '../refusal.ts'
import { apart, isNamed } from '../systems/system-address.ts'
import { parcelAsked } from './parcel-asked.ts'
import { asBuiltNow } from './read-as-built.ts'
import { statusToday } from './read-status.ts'

/** A parcel as its reader may see it: `file` is null for an agent, who sees the status alone. */
export type ParcelRead = {
  readonly parcel: Parcel
  readonly oldNumbers: readonly Alias[]
  readonly status: DatedStatus
  readonly file: ParcelFile | null
}

export type ParcelFile = {
  /** All that serve the parcel or lie on it, its own first. */
  readonly systems: readonly System[]
  /** The one whose file this is. */
  readonly system: System
  readonly asBuilt: AsBuilt
  readonly permits: readonly PermitOnFile[]
  /** Void, merged, or moved to another parcel: they build nothing here. */
  readonly permitsElsewhere: readonly PermitElsewhere[]
  /** A firm's own, drafts too; for a reviewer all that were submitted. */
  readonly findings: readonly FindingsRead[]
  /** Those that stand: a firm's own, for a reviewer all. */
  readonly discrepancies: readonly StandingDiscrepancy[]
  /** For a reviewer; a firm sees none. */
  readonly documents: readonly Document[]
}

export const readParcel = (
  context: OperationContext,
  actor: Person,
  asked: string,
  askedSystem?: string,
): Promise<Answer<ParcelRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const found = await parcelAsked(tx, actor.county, asked)
    if (!found.ok) return found
    const parcel = found.value
    const joined = { ...context, database: within }
    const status = await statusToday(joined, actor, parcel.id)
    const oldNumbers = await aliasesOf(tx, actor.county, parcel.id)
    if (actor.role === 'agent') return ok({ parcel, oldNumbers, status, file: null })
    const systems = await systemsOf(tx, actor.county, parcel.id)
    const named = askedSystem ?? apart(asked).system ?? systems[0]!.id
    const system = systems.find((it) => isNamed(it, named))
    if (!system) return notFound()
    const asBuilt = await asBuiltNow(joined, actor, system, undefined)
    const seen = await asSeen(tx, actor.county, system.id, parcel.id)
    return ok({ parcel, oldNumbers, status, file: { systems, system, asBuilt, ...seen } })
  })

/** In the reader's own name: what they may not see has no rows. */
async function asSeen(
  tx: Tx,
  county: string,
  system: string,
  parcel: string,
): Promise<Omit<ParcelFile, 'systems' | 'system' | 'asBuilt'>> {
  const permits = await permitsOf(tx, county, system)
  const findings = await findingsOf(tx, county, system)
  const standing = await discrepanciesOf(tx, county, system)
  const documents = await documentsOf(tx, county, parcel)
  const names = await organizationNames(
    tx,
    findings.map(({ organization }) => organization),
  )
  return {
    permits,
    permitsElsewhere: await permitsElsewhere(tx, county, parcel),
    findings: findings.map((it) => ({ ...it, firmName: names.get(it.organization) ?? null })),
    discrepancies: standing.filter(({ state }) => state !== 'vanished'),
    documents,
  }
}
