import { z } from 'zod'
import { MATERIALS, type Measures, VESSEL_SHAPES } from '../../../records/component.ts'
import type { StatedVolume } from '../../../records/quantity.ts'
import { orNull, presentTie, presentVolume, volume } from './quantities.ts'

/** The measures of a component, with lengths in the form of the caller. */
export const measuresOf = <L extends z.ZodType, T extends z.ZodType>(length: L, tie: T) => ({
  shape: z.enum(VESSEL_SHAPES).nullable(),
  length: length.nullable(),
  width: length.nullable(),
  diameter: length.nullable(),
  liquidDepth: length.nullable().meta({ description: 'Floor to outlet invert' }),
  insideHeight: length.nullable().meta({ description: 'Floor to the underside of the cover' }),
  wallThickness: length.nullable(),
  effectiveDepth: length.nullable(),
  depthToTop: length.nullable().meta({ description: 'Finished grade to the top' }),
  pipeDiameter: length.nullable(),
  capacity: volume.nullable(),
  compartments: z.number().nullable(),
  count: z.number().nullable().meta({ description: 'How many alike the entry stands for' }),
  material: z.enum(MATERIALS).nullable(),
  tie: tie.nullable(),
})

export const presentMeasures = <L, P>(measures: Measures<L, StatedVolume>, present: (length: L) => P) => ({
  shape: measures.shape,
  length: orNull(measures.length, present),
  width: orNull(measures.width, present),
  diameter: orNull(measures.diameter, present),
  liquidDepth: orNull(measures.liquidDepth, present),
  insideHeight: orNull(measures.insideHeight, present),
  wallThickness: orNull(measures.wallThickness, present),
  effectiveDepth: orNull(measures.effectiveDepth, present),
  depthToTop: orNull(measures.depthToTop, present),
  pipeDiameter: orNull(measures.pipeDiameter, present),
  capacity: orNull(measures.capacity, presentVolume),
  compartments: measures.compartments,
  count: measures.count,
  material: measures.material,
  tie: orNull(measures.tie, (tie) => presentTie(tie, present)),
})
