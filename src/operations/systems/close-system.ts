import type { Tx } from '../../store/database/database.ts'
import { discrepanciesOf, updateDiscrepancy } from '../../store/discrepancies.ts'
import { insertChanges } from '../../store/discrepancy-changes.ts'
import type { OperationContext } from '../context.ts'

/** What stood on a system that is none any more is gone with it, in the service's name: nobody has to decide it. */
export async function closeSystem(
  tx: Tx,
  { newId, clock }: Pick<OperationContext, 'newId' | 'clock'>,
  county: string,
  system: string,
): Promise<void> {
  const at = clock()
  for (const it of await discrepanciesOf(tx, county, system)) {
    if (it.state === 'vanished') continue
    await updateDiscrepancy(tx, county, {
      ...it,
      state: 'vanished',
      changedAt: at,
      revision: it.revision + 1,
    })
    const { kind, body, evidenceHash, parcel, reconciliation } = it
    const { subject: about, reason: before } = body.outcome
    await insertChanges(tx, county, [
      {
        id: newId(),
        parcel,
        discrepancy: it.id,
        reconciliation,
        change: 'vanished',
        beforeHash: evidenceHash,
        afterHash: null,
        body: { kind, about, before, after: null, state: 'vanished' },
        noticedAt: at,
      },
    ])
  }
}
