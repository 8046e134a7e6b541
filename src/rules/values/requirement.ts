import { z } from 'zod'

/**
 * What becomes of one that is there already where none is accepted: it stays until it fails, it is replaced when the
 * property changes hands, or it is a hazard by itself.
 */
export const EXISTING = ['until-it-fails', 'replace-at-transfer', 'hazard'] as const
export type Existing = (typeof EXISTING)[number]

/** Whether something is required (or accepted), with the condition or size the source gives. */
export type Requirement = {
  readonly holds: boolean
  readonly detail: string | null
  /** Null where the rule does not say; a cesspool or a masonry tank that was lawful when it was built then stays. */
  readonly existing: Existing | null
}

export const requirement: z.ZodType<Requirement> = z.strictObject({
  holds: z.boolean(),
  detail: z
    .string()
    .min(1)
    .nullish()
    .transform((value) => value ?? null),
  existing: z
    .enum(EXISTING)
    .nullish()
    .transform((value) => value ?? null),
})
