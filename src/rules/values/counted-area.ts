import { z } from 'zod'
import { COUNTED_AREAS, type CountedArea } from './perc-table.ts'

/** What of a trench counts as absorption area, and the condition the source sets. */
export type CountedAreaRule = { readonly trench: CountedArea; readonly when: string | null }

export const countedArea: z.ZodType<CountedAreaRule> = z.strictObject({
  trench: z.enum(COUNTED_AREAS),
  when: z
    .string()
    .min(1)
    .nullish()
    .transform((value) => value ?? null),
})
