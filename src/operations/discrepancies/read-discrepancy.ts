import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Decision, decisionsAbout } from '../../store/decisions.ts'
import { discrepancyById, type StandingDiscrepancy } from '../../store/discrepancies.ts'
import { type ChangeNoticed, changesOf } from '../../store/discrepancy-changes.ts'
import { type Parcel, parcelById } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type DiscrepancyRead = {
  readonly parcel: Parcel
  readonly discrepancy: StandingDiscrepancy
  /** Oldest first, the superseded ones too. */
  readonly decisions: readonly Decision[]
  readonly changes: readonly ChangeNoticed[]
}

/** A discrepancy with all that was decided about it and all that happened to it. */
export const readDiscrepancy = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<DiscrepancyRead>> =>
  transact(context.database, actor, async (tx) => {
    const discrepancy = await discrepancyById(tx, actor.county, id)
    const parcel = discrepancy && (await parcelById(tx, actor.county, discrepancy.parcel))
    if (!parcel) return notFound()
    return ok({
      parcel,
      discrepancy,
      decisions: await decisionsAbout(tx, actor.county, id),
      changes: await changesOf(tx, actor.county, id),
    })
  })
