import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'

/** The last row whose conditions are met holds; rows run from the general to the demanding. */
export type CompartmentRow = {
  readonly minimum: number
  readonly bedroomsFrom: number | null
  readonly galFrom: number | null
}

/** Least number of compartments (or tanks in series), and the first one's share of the whole, as fractions. */
export type Compartments = {
  readonly rows: NonEmpty<CompartmentRow>
  readonly firstShare: { readonly low: number; readonly high: number } | null
}

const maybe = z
  .number()
  .positive()
  .nullish()
  .transform((value) => value ?? null)

export const compartments: z.ZodType<Compartments> = z.strictObject({
  rows: z
    .array(z.strictObject({ minimum: z.int().positive(), bedroomsFrom: maybe, galFrom: maybe }))
    .nonempty(),
  firstShare: z
    .strictObject({ low: z.number().min(0).max(1), high: z.number().min(0).max(1) })
    .refine((it) => it.low <= it.high, { error: 'low lies above high' })
    .nullish()
    .transform((value) => value ?? null),
}) as never
