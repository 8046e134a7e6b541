import { ok } from '../../base/result.ts'
import type { AsBuilt } from '../../records/as-built.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { discrepanciesOf, type StandingDiscrepancy } from '../../store/discrepancies.ts'
import { type Document, documentsOf } from '../../store/documents.ts'
import { findingsOf } from '../../store/findings.ts'
import { organizationNames } from '../../store/organizations.ts'
import { type Alias, aliasesOf, type Parcel } from '../../store/parcels.ts'
import { type PermitOnFile, permitsOf } from '../../store/permits.ts'
import type { DatedStatus } from '../../store/statuses.ts'
import type { OperationContext } from '../context.ts'
import type { FindingsRead } from '../findings/read-findings.ts'
import type { Answer } from '../refusal.ts'
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
  readonly asBuilt: AsBuilt
  readonly permits: readonly PermitOnFile[]
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
): Promise<Answer<ParcelRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const found = await parcelAsked(tx, actor.county, asked)
    if (!found.ok) return found
    const parcel = found.value
    const joined = { ...context, database: within }
    const status = await statusToday(joined, actor, parcel.id)
    const oldNumbers = await aliasesOf(tx, actor.county, parcel.id)
    const file =
      actor.role === 'agent'
        ? null
        : {
            asBuilt: await asBuiltNow(joined, actor, parcel.id, undefined),
            ...(await asSeen(tx, actor.county, parcel.id)),
          }
    return ok({ parcel, oldNumbers, status, file })
  })

/** In the reader's own name: what they may not see has no rows. */
async function asSeen(tx: Tx, county: string, parcel: string): Promise<Omit<ParcelFile, 'asBuilt'>> {
  const permits = await permitsOf(tx, county, parcel)
  const findings = await findingsOf(tx, county, parcel)
  const standing = await discrepanciesOf(tx, county, parcel)
  const documents = await documentsOf(tx, county, parcel)
  const names = await organizationNames(
    tx,
    findings.map(({ organization }) => organization),
  )
  return {
    permits,
    findings: findings.map((it) => ({ ...it, firmName: names.get(it.organization) ?? null })),
    discrepancies: standing.filter(({ state }) => state !== 'vanished'),
    documents,
  }
}
