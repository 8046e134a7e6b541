import { z } from 'zod'
import { type Range, range } from './quantity.ts'

/** How deep the outlet device reaches, as a share of liquid depth in percent; horizontal cylinders often differ. */
export type Submergence = {
  readonly verticalWalls: Range<'pct'>
  readonly horizontalCylinder: Range<'pct'> | null
}

export const submergence: z.ZodType<Submergence> = z.strictObject({
  verticalWalls: range('pct'),
  horizontalCylinder: range('pct')
    .nullish()
    .transform((value) => value ?? null),
})
