import { z } from 'zod'

/**
 * Daily design flow from a bedroom count: Q = base + perBedroom · max(0, bedrooms − covers), and never below the
 * minimum. "150 gpd a bedroom" is base 0, covers 0, perBedroom 150. Gallons per day (US).
 */
export type DesignFlow = {
  readonly baseGpd: number
  readonly coversBedrooms: number
  readonly perBedroomGpd: number
  readonly minimumGpd: number
}

export const designFlow: z.ZodType<DesignFlow> = z.strictObject({
  baseGpd: z.number().nonnegative().default(0),
  coversBedrooms: z.int().nonnegative().default(0),
  perBedroomGpd: z.number().nonnegative(),
  minimumGpd: z.number().nonnegative().default(0),
})
