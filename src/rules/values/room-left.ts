import { z } from 'zod'

/** Kinds whose liquid stands below an inlet, with room above it. */
export const ROOM_KINDS = ['cesspool', 'seepage-pit', 'laundry-system'] as const

/** Room that has to be left below the inlet of a pit: so many days of design flow and, where the rule says so, inches. */
export type RoomLeft = {
  readonly kinds: readonly (typeof ROOM_KINDS)[number][]
  readonly daysOfFlow: number
  readonly inches: number | null
}

export const roomLeft: z.ZodType<RoomLeft> = z.strictObject({
  kinds: z.array(z.enum(ROOM_KINDS)).nonempty(),
  daysOfFlow: z.number().positive().max(10),
  inches: z
    .number()
    .positive()
    .nullish()
    .transform((value) => value ?? null),
})
