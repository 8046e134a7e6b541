import type { ParcelNumberFormat } from '../reading/parcel-number.ts'
import { type PlaceId, placeOf } from '../rules/pack.ts'
import type { Tx } from './database/database.ts'

export type County = {
  readonly id: string
  readonly name: string
  /** Whose rules it goes by: the place that lookups in the rule book ask for. */
  readonly place: PlaceId
  readonly rulePack: string
  readonly parcelFormat: ParcelNumberFormat
  /** Names of owners and installers stay with what is read of its papers. */
  readonly keepsNames: boolean
  readonly revision: number
}

/** Those of `ids` that are served, by name. */
export async function countiesAmong(tx: Tx, ids: readonly string[]): Promise<readonly County[]> {
  if (ids.length === 0) return []
  const rows = await tx.selectFrom('county').selectAll().where('id', 'in', ids).orderBy('name').execute()
  return rows.map(asCounty)
}

export async function countyById(tx: Tx, id: string): Promise<County | undefined> {
  const row = await tx.selectFrom('county').selectAll().where('id', '=', id).executeTakeFirst()
  return row && asCounty(row)
}

/** Changes how a county's papers are read, and counts its revision up: the owner's, inside `administer`. */
export async function changeCounty(
  tx: Tx,
  id: string,
  { parcelFormat, keepsNames }: Partial<Pick<County, 'parcelFormat' | 'keepsNames'>>,
): Promise<void> {
  await tx
    .updateTable('county')
    .set((eb) => ({
      ...(parcelFormat === undefined ? {} : { parcel_format: JSON.stringify(parcelFormat) }),
      ...(keepsNames === undefined ? {} : { keeps_names: keepsNames }),
      revision: eb('revision', '+', 1),
    }))
    .where('id', '=', id)
    .execute()
}

type Row = {
  id: string
  name: string
  rule_pack: string
  parcel_format: unknown
  keeps_names: boolean
  revision: number
}

const asCounty = ({ id, name, rule_pack, parcel_format, keeps_names, revision }: Row): County => ({
  id,
  name,
  place: placeOf(rule_pack),
  rulePack: rule_pack,
  parcelFormat: parcel_format as ParcelNumberFormat,
  keepsNames: keeps_names,
  revision,
})
