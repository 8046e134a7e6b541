import type { ParcelNumberFormat } from '../../reading/parcel-number.ts'
import type { Tx } from '../../store/database/database.ts'

/** Where rows of an import land, and in whose name. */
export type Landing = {
  readonly tx: Tx
  readonly county: string
  readonly format: ParcelNumberFormat
  readonly importId: string
  readonly by: string
  readonly at: Date
  readonly newId: () => string
}
