import { canonicalParcelNumber, type ParcelNumberFormat } from '../../reading/parcel-number.ts'
import type { Tx } from '../../store/database/database.ts'
import type { RowFault } from '../../store/import-rejections.ts'
import {
  type Led,
  parcelsBearing,
  parcelsOnceNumbered,
  parcelsStandingAt,
} from '../../store/parcels-written.ts'
import type { RowEntry } from './row-entry.ts'

/** The parcel of a row, or what is wrong with how it is named. */
export type Found = { readonly parcel: string } | { readonly fault: RowFault }

/**
 * The parcels of many rows at once: by the number that is borne now, else by an old one, else (where the row has no
 * number) by house and street. What leads to several parcels leads to none: the fault names them.
 */
export async function findParcelsWritten(
  tx: Tx,
  county: string,
  format: ParcelNumberFormat,
  rows: readonly RowEntry[],
): Promise<(row: RowEntry) => Found> {
  const written = new Set(rows.flatMap(({ beside }) => beside.get('parcel') ?? []))
  const canonical = new Map([...written].map((number) => [number, canonicalParcelNumber(number, format)]))
  const numbers = [...canonical.values()].flatMap((number) => (number.ok ? [number.value] : []))
  const bearing = byWritten(await parcelsBearing(tx, county, numbers))
  const others = [...written].filter((text) => {
    const number = canonical.get(text)
    return !number?.ok || !bearing.has(number.value)
  })
  const once = byWritten(await parcelsOnceNumbered(tx, county, others))
  const addresses = rows.flatMap(({ beside }) => (beside.has('parcel') ? [] : (beside.get('address') ?? [])))
  const standing = byWritten(await parcelsStandingAt(tx, county, [...new Set(addresses)]))

  return ({ beside, columns }) => {
    const [number, address] = [beside.get('parcel'), beside.get('address')]
    const fault = (to: string, wants: string): Found => {
      const origin = columns.get(to)
      return { fault: { column: origin?.column ?? to, had: origin?.had ?? null, wants } }
    }
    if (number === undefined) {
      if (address === undefined) return fault('parcel', 'write the parcel number')
      const [only, ...more] = standing.get(address) ?? []
      if (!only) return fault('address', 'no parcel stands at this address: write its number')
      return more.length === 0
        ? only
        : fault('address', `several parcels have this address. Write one of: ${listed([only, ...more])}`)
    }
    const own = canonical.get(number)!
    const bears = own.ok ? bearing.get(own.value)?.[0] : undefined
    if (bears) return bears
    const [only, ...more] = once.get(number) ?? []
    if (only) {
      return more.length === 0
        ? only
        : fault('parcel', `this old number became several parcels. Write one of: ${listed([only, ...more])}`)
    }
    return fault('parcel', own.ok ? `there is no parcel ${own.value}: import the parcels first` : own.error)
  }
}

const byWritten = (found: readonly Led[]): ReadonlyMap<string, readonly Led[]> =>
  Map.groupBy(found, ({ written }) => written)

const listed = (found: readonly Led[]): string =>
  found
    .slice(0, 10)
    .map(({ number }) => number)
    .join(', ')
