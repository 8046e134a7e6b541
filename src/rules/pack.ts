import type { NonEmpty } from '../base/non-empty.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { Citation } from './citation.ts'
import type { GoverningDate, ParameterName, ValueOf } from './parameters.ts'

/** Whose rules a pack holds; nearest first, as they layer. */
export const JURISDICTION_KINDS = ['county', 'state', 'model-code', 'federal', 'lender', 'practice'] as const
export type JurisdictionKind = (typeof JURISDICTION_KINDS)[number]

/** `<place>/<topic>`, the path of its file without the ending. The place is what lookups ask by. */
export type PackId = string
export type PlaceId = string

export const placeOf = (pack: PackId): PlaceId => pack.split('/', 1)[0] ?? pack

/** Where a source contradicts itself or another: both stand, and this says so wherever the value shows. */
export type Contradiction = { readonly says: string; readonly citations: NonEmpty<Citation> }

/** One value and the days it holds: from `from` (included) until `until` (the first day it no longer holds). */
export type Entry<Value> = {
  readonly from: PlainDate | null
  readonly until: PlainDate | null
  readonly value: Value
  readonly citations: NonEmpty<Citation>
  readonly note: string | null
  readonly contradictions: readonly Contradiction[]
}

export type Parameter<Name extends ParameterName = ParameterName> = {
  readonly name: Name
  readonly governedBy: GoverningDate
  readonly entries: NonEmpty<Entry<ValueOf<Name>>>
}

/** A span in which a place went by other packs, and what the file says of it. No packs: nothing was adopted. */
export type Adoption = {
  readonly from: PlainDate | null
  readonly until: PlainDate | null
  readonly packs: readonly PackId[]
  readonly note: string
}

export type Pack = {
  readonly pack: PackId
  readonly jurisdiction: { readonly kind: JurisdictionKind; readonly name: string }
  readonly title: string
  /** Marked so wherever it shows: a pack made up for demonstration. */
  readonly invented: boolean
  readonly extends: readonly PackId[]
  readonly adoption: readonly Adoption[]
  readonly parameters: readonly Parameter[]
}
