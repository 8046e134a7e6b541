import { z } from 'zod'
import { COMPONENT_KINDS, type ComponentKind } from '../../catalog/kinds.ts'
import { distinct } from './list-checks.ts'

/** What an inspection does with a part, or with the whole system. */
export const STEPS = [
  'locate',
  'open',
  'read-level',
  'see-outlet-device',
  'check-cover',
  'test-pump',
  'test-alarm',
  'test-floats',
  'check-wiring',
  'test-disinfection',
  'ask-contract',
  'walk-ground',
  'count-bedrooms',
  'ask-occupancy',
  'ask-pumping',
  'ask-backup',
  'run-water',
  'locate-outflow',
] as const
export type Step = (typeof STEPS)[number]

/** One thing that an inspection has to do. `needed`: without it the inspection is incomplete. */
export type ProtocolItem = {
  readonly id: string
  readonly step: Step
  /** The kinds of part it is done with; null where it is done once for the system. */
  readonly kinds: readonly ComponentKind[] | null
  readonly needed: boolean
  /** Asked only where the house had stood empty for so many days, or for nobody knows how many; null where it always is. */
  readonly vacantDays: number | null
}

export type Protocol = readonly ProtocolItem[]

export const protocol: z.ZodType<Protocol> = distinct(
  z
    .array(
      z.strictObject({
        id: z.string().trim().min(1),
        step: z.enum(STEPS),
        kinds: z
          .array(z.enum(COMPONENT_KINDS))
          .nonempty()
          .nullish()
          .transform((value) => value ?? null),
        needed: z.boolean(),
        vacantDays: z
          .int()
          .positive()
          .nullish()
          .transform((value) => value ?? null),
      }),
    )
    .nonempty(),
  (it) => it.id,
  'id',
  'id',
) as never
