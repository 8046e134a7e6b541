import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type Decision, decisionsAbout } from '../../store/decisions.ts'
import { discrepancyById, type StandingDiscrepancy } from '../../store/discrepancies.ts'
import { type ChangeNoticed, changesOf } from '../../store/discrepancy-changes.ts'
import { type Parcel, parcelById } from '../../store/parcels.ts'
import { reconciliationById } from '../../store/reconciliations.ts'
import type { OperationContext } from '../context.ts'
import { fullAnswerFor } from '../reconciliation/full-answer.ts'
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
  transact(context.database, actor, async (tx, within) => {
    const discrepancy = await discrepancyById(tx, actor.county, id)
    const parcel = discrepancy && (await parcelById(tx, actor.county, discrepancy.parcel))
    if (!parcel) return notFound()
    return ok({
      parcel,
      discrepancy: await withWorking(tx, within, actor, discrepancy),
      decisions: await decisionsAbout(tx, actor.county, id),
      changes: await changesOf(tx, actor.county, id),
    })
  })

/** With the steps of its working, computed again from what the answer that raised it rests on. */
async function withWorking(
  tx: Tx,
  within: Database,
  actor: Person,
  it: StandingDiscrepancy,
): Promise<StandingDiscrepancy> {
  const stored = await reconciliationById(tx, actor.county, it.reconciliation)
  if (!stored) return it
  const { discrepancies } = await fullAnswerFor(within, actor, stored)
  const again = discrepancies.find(({ key }) => key === it.key)
  return again
    ? { ...it, body: { ...it.body, outcome: { ...it.body.outcome, steps: again.outcome.steps } } }
    : it
}
