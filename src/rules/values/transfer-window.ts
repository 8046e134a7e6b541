import { z } from 'zod'

/** A span of calendar time as a rule writes it: "two years", "6 months", "15 calendar days". */
export type CalendarSpan = { readonly count: number; readonly unit: 'days' | 'months' | 'years' }

/**
 * When an inspection counts for a transfer of property. `before`: no older than this at the transfer (null: any time
 * before). `ifPumpedYearly`: the longer span for a tank pumped every year. `afterIfWeather`: how long after the
 * transfer it may still be done where weather prevented it.
 */
export type TransferWindow = {
  readonly before: CalendarSpan | null
  readonly ifPumpedYearly: CalendarSpan | null
  readonly afterIfWeather: CalendarSpan | null
}

const span = z
  .strictObject({ count: z.int().positive(), unit: z.enum(['days', 'months', 'years']) })
  .nullish()
  .transform((value) => value ?? null)

export const transferWindow: z.ZodType<TransferWindow> = z.strictObject({
  before: span,
  ifPumpedYearly: span,
  afterIfWeather: span,
})
