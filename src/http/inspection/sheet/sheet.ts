import type { ComponentKind } from '../../../catalog/kinds.ts'
import type { Caution } from '../../../words/cautions.ts'

/** A component in service on record, as the form asks for it: what the papers say of each measure, and where to look. */
export type SheetPart = {
  /** Names its step in the address: `tank`, `pit-2`. */
  readonly id: string
  readonly key: string
  readonly kind: ComponentKind
  readonly label: string
  readonly onRecord: { readonly [measure: string]: string }
  readonly where: readonly string[]
  /** What is usual for its time and make, and on no paper. */
  readonly usual: readonly string[]
}

/** A component that the record took out of service, and that may still be there. */
export type FormerPart = Pick<SheetPart, 'key' | 'kind' | 'label'> & { readonly says: string }

/** A measurement that would decide questions, most telling first. */
export type Wanted = {
  readonly key: string | null
  readonly field: string
  readonly what: string
  readonly how: string
  readonly settles: readonly string[]
}

/** All that the form shows besides what is typed into it: a county's file on one parcel, laid out for the walk. */
export type InspectionSheet = {
  readonly county: string
  readonly parcel: { readonly id: string; readonly number: string; readonly address: string | null }
  readonly asOf: string
  readonly parts: readonly SheetPart[]
  readonly former: readonly FormerPart[]
  /** The parcels that the system serves, where there are several: what is counted is of all of them. */
  readonly serves?: readonly string[]
  /** Of the whole system, by field, as the papers write it. */
  readonly system: { readonly [field: string]: string }
  readonly reference: {
    readonly a: string
    readonly b: string
    readonly wall: string | null
    readonly baseline: string | null
  } | null
  readonly plan: { readonly svg: string | null; readonly words: readonly string[] }
  readonly wanted: readonly Wanted[]
  readonly cautions: readonly Caution[]
}
