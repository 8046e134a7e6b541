import type { OperationContext } from '../../operations/context.ts'
import type { Answer } from '../../operations/refusal.ts'
import {
  addSystem,
  changeSystem,
  type SystemEntry,
  type SystemSaidNow,
} from '../../operations/systems/change-system.ts'
import type { Cast } from './enrol.ts'
import type { ParcelFile } from './story.ts'

/** What a story says of a system, said by the reviewer: of the parcel's own, else of another one. */
export function saySystem(
  context: OperationContext,
  { reviewer }: Cast,
  { parcel, system }: ParcelFile,
  own: string | undefined,
): Promise<Answer<SystemSaidNow>> {
  const { use, label = null, parcels, reason } = system!
  const entry: SystemEntry = {
    use,
    label,
    reason,
    parcels: parcels.map(({ bedrooms = null, ...it }) => ({ ...it, bedrooms, designFlowGpd: null })),
  }
  return own
    ? changeSystem(context, reviewer, { id: own, version: undefined, entry })
    : addSystem(context, reviewer, parcel.number, entry)
}
