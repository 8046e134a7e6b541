import type { Person } from '../../../../src/store/database/actor.ts'
import { transact } from '../../../../src/store/database/transact.ts'
import { parcelsNumbered } from '../../../../src/store/parcels.ts'
import { permitsOf } from '../../../../src/store/permits.ts'
import type { TestApp } from '../../../support/app.ts'

/** The permits in a parcel's file. */
export const permitsOfParcel = ({ database }: TestApp['services'], actor: Person, number: string) =>
  transact(database, actor, async (tx) => {
    const [parcel] = await parcelsNumbered(tx, actor.county, number)
    if (!parcel) throw new Error(`no parcel ${number}`)
    return permitsOf(tx, actor.county, parcel.id)
  })
