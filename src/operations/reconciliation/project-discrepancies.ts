import type { Tx } from '../../store/database/database.ts'
import { decisionsInForce } from '../../store/decisions.ts'
import { discrepanciesOf, insertDiscrepancy, updateDiscrepancy } from '../../store/discrepancies.ts'
import { type ChangeNoticed, insertChanges } from '../../store/discrepancy-changes.ts'
import type { Findings } from '../../store/findings.ts'
import type { StoredReconciliation } from '../../store/reconciliations.ts'
import type { OperationContext } from '../context.ts'
import { projectOnto } from './project-onto.ts'

/**
 * Brings the standing discrepancies of a system to what a new reconciliation says, and notes what appeared, changed,
 * vanished or returned. Call it with the parcel locked.
 */
export async function projectDiscrepancies(
  tx: Tx,
  context: Pick<OperationContext, 'newId'>,
  county: string,
  made: StoredReconciliation,
  findings: Findings | undefined,
): Promise<readonly ChangeNoticed[]> {
  const [before, decisions] = await Promise.all([
    discrepanciesOf(tx, county, made.system),
    decisionsInForce(tx, county, made.system),
  ])
  const { inserted, updated, changes } = projectOnto({ before, decisions, findings }, made, context)
  for (const it of inserted) await insertDiscrepancy(tx, county, it)
  for (const it of updated) await updateDiscrepancy(tx, county, it)
  await insertChanges(tx, county, changes)
  return changes
}
