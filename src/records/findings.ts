import type { PlainDate } from '../base/plain-date.ts'
import type { FoundFields } from '../catalog/catalog.ts'
import type { INSPECTION_FIELDS } from '../catalog/inspection-fields.ts'
import type { FIX } from '../catalog/places.ts'
import type { RecordOf } from '../catalog/value-of.ts'
import type { StatedVolume } from '../measure/parse/volume.ts'
import type { FoundLength } from './quantity.ts'
import type { FirmText } from './whose.ts'

export type Fix = RecordOf<typeof FIX.parts, never, never>

export type FoundComponent = RecordOf<FoundFields, FoundLength, StatedVolume, FirmText>

/** One dated inspection by one firm. */
export type FindingsRecord = RecordOf<typeof INSPECTION_FIELDS, FoundLength, StatedVolume, FirmText> & {
  readonly components: readonly FoundComponent[]
}

/** Findings as submitted: never changed afterwards, only amended by another. */
export type SubmittedFindings = {
  readonly id: string
  readonly firm: string
  readonly submittedOn: PlainDate
  readonly record: FindingsRecord
}
