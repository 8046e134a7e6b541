import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
import { distinct } from './list-checks.ts'
import { COUNTED_AREAS, type CountedArea } from './perc-table.ts'

/** A soil class and its long-term application rate, gpd per sq ft. `atLeast`: the source prints "more than". */
export type TextureRow = {
  readonly soil: string
  readonly gpdPerSqFt: number
  readonly atLeast: boolean
}

export type TextureTable = {
  readonly table: string
  readonly counts: CountedArea
  readonly rows: NonEmpty<TextureRow>
}

const row = z.strictObject({
  soil: z.string().min(1),
  gpdPerSqFt: z.number().positive(),
  atLeast: z.boolean().default(false),
})

export const textureTable: z.ZodType<TextureTable> = z.strictObject({
  table: z.string().min(1),
  counts: z.enum(COUNTED_AREAS),
  rows: distinct(z.array(row).nonempty(), (it) => it.soil, 'soil', 'soil'),
}) as never
