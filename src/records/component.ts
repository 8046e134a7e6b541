import type { MEASURES } from '../catalog/component-measures.ts'
import type { REFERENCE, TIE } from '../catalog/places.ts'
import type { RecordOf } from '../catalog/value-of.ts'
import type { StatedVolume } from '../measure/parse/volume.ts'

/**
 * The measures a permit states and an inspection finds, under the same names: `L` is how a length is held (as written, or
 * as taken with a method).
 */
export type Measures<L, V = StatedVolume> = RecordOf<typeof MEASURES, L, V>

export type Tie<L> = RecordOf<typeof TIE.parts, L, never>

/** The two house corners that ties run from: see the catalog. */
export type Reference<L> = RecordOf<typeof REFERENCE.parts, L, never>
