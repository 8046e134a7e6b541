import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
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

export const textureTable: z.ZodType<TextureTable> = z.strictObject({
  table: z.string().min(1),
  counts: z.enum(COUNTED_AREAS),
  rows: z
    .array(
      z.strictObject({
        soil: z.string().min(1),
        gpdPerSqFt: z.number().positive(),
        atLeast: z.boolean().default(false),
      }),
    )
    .nonempty()
    .superRefine((list, context) => {
      const seen = new Set<string>()
      for (const [i, { soil }] of list.entries()) {
        if (seen.has(soil.toLowerCase()))
          context.addIssue({ code: 'custom', path: [i, 'soil'], message: `soil "${soil}" stands twice` })
        seen.add(soil.toLowerCase())
      }
    }),
}) as never
