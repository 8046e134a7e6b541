import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
import { inOrder } from './list-checks.ts'

/** What of the excavation counts as absorption area. */
export const COUNTED_AREAS = ['bottom', 'sidewall', 'bottom-and-one-foot-of-sidewall'] as const
export type CountedArea = (typeof COUNTED_AREAS)[number]

/**
 * Up to `upTo` minutes (included), from just above the row before. Either column may be missing; where a source prints
 * both and they disagree, both stand. `texture` narrows a row to one soil (a fine-sand exception).
 */
export type PercRow = {
  readonly upTo: number
  readonly texture: string | null
  readonly sqFtPerBedroom: number | null
  readonly gpdPerSqFt: number | null
}

type Bounds = {
  readonly table: string
  /** Minutes for the water to fall one inch, or to fall the last six inches. */
  readonly reading: 'minutes-per-inch' | 'minutes-for-last-6-inches'
  readonly counts: CountedArea
  /** Faster than this (in the table's reading) is unsuitable, or the table is silent; null: no lower bound. */
  readonly fastest: { readonly limit: number; readonly beyond: 'unsuitable' | 'not-stated' } | null
  /** Slower than the last row, or than the formula's limit. */
  readonly slower: 'unsuitable' | 'not-stated'
  /** A bed needs this many times the area of trenches; 1 where the table makes no difference. */
  readonly bedFactor: number
  /** The table is for seepage pits alone; false: for whatever absorbs. */
  readonly pitsOnly: boolean
  /** Seepage pits are unsuitable in ground slower than this, in the table's reading; null: as slow as the rest. */
  readonly pitsSlowest: number | null
  /** Area for at least so many bedrooms, however few there are. */
  readonly leastBedrooms: number
  /** Never less area than this, sq ft. */
  readonly leastSqFt: number
  /** What gravel below the pipe takes off the area of trenches: the deepest that is reached. Empty: nothing. */
  readonly gravelCredits: readonly GravelCredit[]
}

/** So much less area, percent, for at least so many inches of gravel below the pipe. */
export type GravelCredit = { readonly fromIn: number; readonly pct: number }

/** Percolation reading to absorption area. Rows are never interpolated: the next slower row governs. */
export type PercTable =
  | (Bounds & { readonly rule: 'rows'; readonly rows: NonEmpty<PercRow> })
  | (Bounds & RootForm)

/**
 * Q/A = coefficient / √t, t in minutes per inch, up to `slowest` (the Ryon form); null: as slow as it may be. Ground
 * faster than `quickest` counts as that fast. `bedCoefficient` is a bed's own. The formula holds for flows `fromGpd` to
 * `toGpd`, both included; null: for any.
 */
export type RootForm = {
  readonly rule: 'inverse-root'
  readonly coefficient: number
  readonly bedCoefficient: number | null
  readonly slowest: number | null
  readonly quickest: number | null
  readonly fromGpd: number | null
  readonly toGpd: number | null
}

const positive = z.number().positive()
const maybe = positive.nullish().transform((value) => value ?? null)

const bounds = {
  table: z.string().min(1),
  reading: z.enum(['minutes-per-inch', 'minutes-for-last-6-inches']),
  counts: z.enum(COUNTED_AREAS),
  fastest: z
    .strictObject({ limit: positive, beyond: z.enum(['unsuitable', 'not-stated']) })
    .nullish()
    .transform((value) => value ?? null),
  slower: z.enum(['unsuitable', 'not-stated']),
  bedFactor: positive.default(1),
  pitsOnly: z.boolean().default(false),
  pitsSlowest: maybe,
  leastBedrooms: z.int().nonnegative().default(0),
  leastSqFt: z.number().nonnegative().default(0),
  gravelCredits: inOrder(
    z.array(z.strictObject({ fromIn: positive, pct: positive.lt(100) })).default([]),
    (before, it) => it.fromIn <= before.fromIn || it.pct <= before.pct,
    'gravel credits must run from shallow to deep',
    'fromIn',
  ),
}

const row = z
  .strictObject({
    upTo: positive,
    texture: z
      .string()
      .min(1)
      .nullish()
      .transform((value) => value ?? null),
    sqFtPerBedroom: maybe,
    gpdPerSqFt: maybe,
  })
  .refine((it) => it.sqFtPerBedroom !== null || it.gpdPerSqFt !== null, {
    error: 'a row needs sq-ft-per-bedroom or gpd-per-sq-ft',
  })

const rows = inOrder(
  z.array(row).nonempty(),
  (before, it) => it.upTo < before.upTo || (it.upTo === before.upTo && it.texture === before.texture),
  'rows must run from fast to slow',
  'upTo',
)

export const percTable: z.ZodType<PercTable> = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('rows'), ...bounds, rows }),
  z
    .strictObject({
      rule: z.literal('inverse-root'),
      ...bounds,
      coefficient: positive,
      bedCoefficient: maybe,
      slowest: maybe,
      quickest: maybe,
      fromGpd: maybe,
      toGpd: maybe,
    })
    .refine((it) => it.slowest !== null || it.slower === 'not-stated', {
      error: 'without slowest there is nothing slower: write slower: not-stated',
      path: ['slower'],
    }),
]) as never
