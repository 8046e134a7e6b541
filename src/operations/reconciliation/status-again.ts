import { type Actor, asService } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { DatedStatus } from '../../store/statuses.ts'
import { lockTogether } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { deriveStatuses, type SystemStanding, standingSystem } from './derive-status.ts'
import { gatherInput } from './gather-input.ts'

/** After a decision: no answer changes, and the status does, of every parcel that hangs together with this one. */
export const statusAgain = (context: OperationContext, actor: Actor, parcel: string): Promise<DatedStatus> =>
  transact(context.database, asService(actor), async (tx) => {
    const { county } = actor
    const { parcels, systems } = await lockTogether(tx, county, [parcel])
    const standings: SystemStanding[] = []
    for (const system of systems) {
      const { input } = await gatherInput(tx, context, county, system)
      standings.push(await standingSystem(tx, county, system, input, context.clock()))
    }
    const statuses = await deriveStatuses(tx, county, parcels, standings)
    return statuses.get(parcel)!.status
  })
