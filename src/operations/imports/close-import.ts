import type { Service } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { changeImport, type Import } from '../../store/imports.ts'
import { moveRerun, rerunCounts } from '../../store/reruns.ts'
import type { OperationContext } from '../context.ts'
import { leaveShares } from '../reruns/begin-rerun.ts'

/** Ends an import, and leaves the parcels that it touched to be reconciled. */
export const closeImport = (context: OperationContext, service: Service, it: Import): Promise<void> =>
  transact(context.database, service, async (tx) => {
    const { county } = service
    const at = context.clock()
    await changeImport(tx, county, it.id, { state: 'done', reason: null, endedAt: at })
    if (it.rerun === null) return
    const { waiting } = await rerunCounts(tx, county, it.rerun)
    await moveRerun(tx, county, it.rerun, ['gathering'], waiting > 0 ? 'running' : 'done', at)
    if (waiting > 0) await leaveShares(context, tx, service, it.rerun)
  })
