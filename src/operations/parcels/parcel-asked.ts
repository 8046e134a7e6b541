import { ok } from '../../base/result.ts'
import type { Tx } from '../../store/database/database.ts'
import { type Parcel, parcelById, parcelsNumbered } from '../../store/parcels.ts'
import { type Answer, notFound } from '../refusal.ts'
import { apart } from '../systems/system-address.ts'

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/**
 * The parcel that someone asks for, by its id or by its number in any spelling; an old number finds the parcel that it
 * became. An old number that became several parcels finds none by itself: the answer names them.
 */
export async function parcelAsked(tx: Tx, county: string, written: string): Promise<Answer<Parcel>> {
  const { parcel: asked } = apart(written)
  if (UUID.test(asked)) {
    const parcel = await parcelById(tx, county, asked.toLowerCase())
    return parcel ? ok(parcel) : notFound()
  }
  const [only, ...others] = await parcelsNumbered(tx, county, asked)
  if (!only) return notFound()
  if (others.length === 0) return ok(only)
  const numbers = [only, ...others].map(({ number }) => number).join(', ')
  return notFound(`This number became several parcels: ${numbers}. Choose one of them.`)
}
