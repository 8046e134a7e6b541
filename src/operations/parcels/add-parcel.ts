import { ok } from '../../base/result.ts'
import { canonicalParcelNumber } from '../../reading/parcel-number.ts'
import { countyById } from '../../store/counties.ts'
import type { Service } from '../../store/database/actor.ts'
import { isDuplicate } from '../../store/database/database-fault.ts'
import { transact } from '../../store/database/transact.ts'
import { type Alias, insertAlias, insertParcel, type Parcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid, notFound } from '../refusal.ts'

export type NewParcel = Omit<Parcel, 'id'> & { readonly oldNumbers: readonly Alias[] }

/** Puts a parcel on the county's list, as an import or the demonstration does; its number in the county's own spelling. */
export async function addParcel(
  context: OperationContext,
  actor: Service,
  { number: written, oldNumbers, ...rest }: NewParcel,
): Promise<Answer<Parcel>> {
  try {
    return await transact(context.database, actor, async (tx) => {
      const county = await countyById(tx, actor.county)
      if (!county) return notFound()
      const number = canonicalParcelNumber(written, county.parcelFormat)
      if (!number.ok) return invalid({ pointer: '/number', message: number.error })
      const parcel: Parcel = { id: context.newId(), number: number.value, ...rest }
      await insertParcel(tx, actor.county, parcel)
      for (const alias of oldNumbers) await insertAlias(tx, actor.county, parcel.id, alias)
      return ok(parcel)
    })
  } catch (fault) {
    if (isDuplicate(fault)) return conflict(`There is already a parcel ${written}.`)
    throw fault
  }
}
