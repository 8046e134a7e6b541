import type { SystemGiven } from '../../reconcile/system-given.ts'
import { type System, servedBy } from '../../records/system.ts'
import type { Tx } from '../../store/database/database.ts'
import type { PermitOnFile } from '../../store/permits.ts'
import { systemsOf } from '../../store/systems.ts'

/**
 * What is known of a system beside its papers: what each parcel that it serves puts on it, and whether it is the only one.
 * Undefined for a parcel's own where nothing else is said, so that its answer stays what it was to the byte.
 */
export async function systemGiven(
  tx: Tx,
  county: string,
  system: System,
  permits: readonly PermitOnFile[],
): Promise<SystemGiven | undefined> {
  const served = servedBy(system)
  let oneOfSeveral = false
  for (const { parcel } of served) {
    const others = (await systemsOf(tx, county, parcel)).filter(
      (it) => it.id !== system.id && servedBy(it).some((on) => on.parcel === parcel),
    )
    if (others.length > 0) oneOfSeveral = true
  }
  const liesElsewhere = system.parcels.some(({ serves, liesOn }) => liesOn && !serves)
  if (system.revision === 0 && !oneOfSeveral) return undefined
  return {
    id: system.id,
    revision: system.revision,
    oneOfSeveral,
    liesElsewhere,
    serves: served.map(({ parcel, number, bedrooms, designFlowGpd }) => ({
      parcel: number,
      permits: permits.filter((it) => it.parcel === parcel).map(({ id }) => id),
      bedrooms,
      designFlowGpd,
    })),
  }
}
