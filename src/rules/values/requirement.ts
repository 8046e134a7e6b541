import { z } from 'zod'

/** Whether something is required (or accepted), with the condition or size the source gives. */
export type Requirement = { readonly holds: boolean; readonly detail: string | null }

export const requirement: z.ZodType<Requirement> = z.strictObject({
  holds: z.boolean(),
  detail: z
    .string()
    .min(1)
    .nullish()
    .transform((value) => value ?? null),
})
