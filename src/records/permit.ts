import type { PlainDate } from '../base/plain-date.ts'
import type { ComponentKind, Measures, Reference } from './component.ts'
import type { StatedLength, StatedVolume } from './quantity.ts'
import type { Source } from './source.ts'
import type { PaperText } from './whose.ts'

export const PERMIT_KINDS = ['new', 'repair', 'alteration', 'abandonment'] as const
export type PermitKind = (typeof PERMIT_KINDS)[number]

/** What a permit does to a component: put in, put in for an older one, change in part, take out of use, mention. */
export const PERMIT_ACTIONS = ['install', 'replace', 'alter', 'abandon', 'mention'] as const
export type PermitAction = (typeof PERMIT_ACTIONS)[number]

export type StatedComponent = Measures<StatedLength, StatedVolume> & {
  /** The component's name on the paper, unique within the permit: `tank 1`. */
  readonly tag: PaperText
  readonly kind: ComponentKind
  readonly action: PermitAction
  /** Tags of components already in the ground that this one takes the place of. */
  readonly replaces: readonly string[]
  readonly note: PaperText | null
}

/** One paper in the file, as confirmed by a person. Absent values are null; unreadable ones are in `unreadable`. */
export type PermitRecord = {
  readonly number: string
  readonly kind: PermitKind
  readonly issuedOn: PlainDate | null
  readonly approvedOn: PlainDate | null
  readonly bedrooms: number | null
  readonly designFlowGpd: number | null
  readonly percRateMpi: number | null
  readonly soilTexture: string | null
  readonly reference: Reference<StatedLength> | null
  readonly components: readonly StatedComponent[]
  readonly remarks: PaperText | null
  /** Values that are on the paper but cannot be read: JSON Pointer into this record, and what can be made out. */
  readonly unreadable: readonly { readonly pointer: string; readonly note: PaperText }[]
}

/** A permit in the file: the record, its revision, and where each value came from (JSON Pointer; '' is the rest). */
export type FiledPermit = {
  readonly id: string
  readonly revision: number
  readonly record: PermitRecord
  readonly sources: { readonly [pointer: string]: Source }
}
