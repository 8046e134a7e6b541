import type { System } from '../../records/system.ts'
import type { Tx } from '../../store/database/database.ts'
import type { RowFault } from '../../store/import-rejections.ts'
import { outOfTheOrdinary, systemsOf } from '../../store/systems.ts'
import { systemName } from '../../words/system.ts'
import type { RowEntry } from './row-entry.ts'

type SystemFound = { readonly system: string } | { readonly fault: RowFault }

/**
 * The system that a row on a parcel is of: the only one, or the one whose name or id the row gives. Where there are
 * several and it names none, nothing is guessed.
 */
export async function findSystemsWritten(
  tx: Tx,
  county: string,
  parcels: readonly string[],
): Promise<(row: RowEntry, parcel: string) => SystemFound> {
  const systems = new Map<string, readonly System[]>()
  for (const parcel of await outOfTheOrdinary(tx, county, parcels))
    systems.set(parcel, await systemsOf(tx, county, parcel))

  return ({ beside, columns }, parcel) => {
    const written = beside.get('system')
    const known = systems.get(parcel)
    const named = known?.map((it) => ({ id: it.id, name: systemName(it, known) })) ?? []
    if (written === undefined && named.length < 2) return { system: named[0]?.id ?? parcel }
    const meant = named.filter(
      ({ id, name }) => id === written || name.toLowerCase() === written?.toLowerCase(),
    )
    const [only, ...more] = meant
    if (only && more.length === 0) return { system: only.id }
    const { column = 'system', had = null } = columns.get('system') ?? {}
    const names = named.map(({ name }) => name).join(', ')
    const wants =
      named.length < 2
        ? 'this parcel has one system: leave this empty'
        : `this parcel has ${named.length} systems. Write one of: ${names}`
    return { fault: { column, had, wants } }
  }
}
