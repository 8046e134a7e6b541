import type { StatedFields } from '../catalog/catalog.ts'
import type { PERMIT_FIELDS } from '../catalog/permit-fields.ts'
import type { RecordOf } from '../catalog/value-of.ts'
import type { StatedLength } from '../measure/parse/length.ts'
import type { StatedVolume } from '../measure/parse/volume.ts'
import type { Source } from './source.ts'
import type { PaperText } from './whose.ts'

export {
  PERMIT_ACTIONS,
  PERMIT_KINDS,
  type PermitAction,
  type PermitKind,
} from '../catalog/choices.ts'

export type StatedComponent = RecordOf<StatedFields, StatedLength, StatedVolume, PaperText>

/** One paper in the file, as confirmed by a person. Absent values are null; unreadable ones are in `unreadable`. */
export type PermitRecord = RecordOf<typeof PERMIT_FIELDS, StatedLength, StatedVolume, PaperText> & {
  readonly components: readonly StatedComponent[]
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
