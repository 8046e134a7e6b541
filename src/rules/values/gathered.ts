import { z } from 'zod'
import type { PlainDate } from '../../base/plain-date.ts'
import { MATERIALS, type Material } from '../../catalog/choices.ts'
import { COMPONENT_KINDS, type ComponentKind } from '../../catalog/kinds.ts'
import { type Citation, citation } from '../citation.ts'
import { dayOrOpen } from '../day.ts'
import { distinct } from './list-checks.ts'

const text = z.string().trim().min(1)
const maybe = <T>(schema: z.ZodType<T>) => schema.nullish().transform((value) => value ?? null)

/** What an item of an era or an expectation speaks of. */
export const ABOUT = [...COMPONENT_KINDS, 'lid', 'baffle', 'pipe', 'record', 'system', 'volume'] as const
export type About = ComponentKind | 'lid' | 'baffle' | 'pipe' | 'record' | 'system' | 'volume'

type Item = {
  readonly id: string
  readonly about: About
  readonly says: string
  /** Built or installed in this span; `until` is the first day outside it. */
  readonly from: PlainDate | null
  readonly until: PlainDate | null
  readonly material: Material | null
  readonly citations: readonly [Citation, ...Citation[]]
}

/** A fact of its time, in words: what was built then, or allowed, or ended. */
export type EraFact = Item

/**
 * What is usual where the record is silent. Never a record and never a requirement. The figures, where there are any,
 * are for drawing: `low` to `high` in `unit`, measured as `measured` says.
 */
export type Expectation = Item & {
  readonly figure: {
    readonly low: number
    readonly high: number
    readonly unit: 'ft' | 'in' | 'gal/ft3' | 'years'
    readonly measured: string
  } | null
  readonly side: 'away-from-well' | 'downhill' | null
}

const item = {
  id: text,
  about: z.enum(ABOUT),
  says: text,
  from: dayOrOpen,
  until: dayOrOpen,
  material: maybe(z.enum(MATERIALS)),
  citations: z.array(citation).nonempty(),
}

const figure = z
  .strictObject({
    low: z.number(),
    high: z.number(),
    unit: z.enum(['ft', 'in', 'gal/ft3', 'years']),
    measured: text,
  })
  .refine((it) => it.low <= it.high, { error: 'low lies above high' })

export const eraFacts: z.ZodType<readonly EraFact[]> = distinct(
  z.array(z.strictObject(item)).nonempty(),
  (it) => it.id,
  'id',
  'id',
) as never

const side = maybe(z.enum(['away-from-well', 'downhill']))

export const expectations: z.ZodType<readonly Expectation[]> = distinct(
  z.array(z.strictObject({ ...item, figure: maybe(figure), side })).nonempty(),
  (it) => it.id,
  'id',
  'id',
) as never
