import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
import { type DesignFlow, designFlow } from './design-flow.ts'
import { inOrder } from './list-checks.ts'

/** Row of a bedroom table: this many bedrooms and fewer (down to the row above) need `gal`. */
export type BedroomRow = { readonly bedrooms: number; readonly gal: number }

/**
 * V = times · (Q − after) + plus, for flows up to `upTo` (included) or `below` (excluded); the last has neither. With
 * `times` 0 a piece is a plain row of a table.
 */
export type FlowPiece = {
  readonly upTo: number | null
  readonly below: number | null
  readonly times: number
  readonly after: number
  readonly plus: number
}

/** Above the last row: the last row holds for all more; so much for each more; by flow; or the table is silent. */
export type MoreBedrooms =
  | { readonly rule: 'open-top' }
  | { readonly rule: 'add-per-bedroom'; readonly gal: number }
  | { readonly rule: 'by-flow'; readonly flow: DesignFlow | null; readonly pieces: NonEmpty<FlowPiece> }
  | { readonly rule: 'not-stated' }

/** What makes a rule ask for more than its table. */
export const BURDENS = ['garbage-grinder', 'lift-pump', 'large-tub'] as const
export type Burden = (typeof BURDENS)[number]

/** Where any of the burdens is there, the table times a factor, a table of its own, or so many gallons more. */
export type Adjustment = { readonly when: NonEmpty<Burden> } & (
  | { readonly factor: number }
  | { readonly rule: CapacityRule }
  | { readonly addGal: number }
)

type Shared = {
  /** The name the source gives the table, for the steps: "Table 5.2". */
  readonly table: string
  /** Never below this many gallons, whatever the table says. */
  readonly minimumGal: number
  /** The first factor or table whose burden is there applies; gallons more are added for each whose burden is there. */
  readonly adjustments: readonly Adjustment[]
}

/** Minimum liquid capacity in US gallons, as law and model codes write it. */
export type CapacityRule =
  | (Shared & { readonly by: 'bedrooms'; readonly rows: NonEmpty<BedroomRow>; readonly more: MoreBedrooms })
  | (Shared & { readonly by: 'flow'; readonly flow: DesignFlow | null; readonly pieces: NonEmpty<FlowPiece> })
  | (Shared & { readonly by: 'largest-of'; readonly rules: NonEmpty<CapacityRule> })

const positive = z.number().positive()
const edge = positive.nullish().transform((value) => value ?? null)

const piece = z
  .strictObject({
    upTo: edge,
    below: edge,
    times: z.number().default(0),
    after: z.number().default(0),
    plus: z.number().default(0),
  })
  .refine((it) => it.upTo === null || it.below === null, { error: 'write either up-to or below, not both' })

const top = (it: FlowPiece): number => it.upTo ?? it.below ?? Number.POSITIVE_INFINITY

/** Pieces run upward without a gap: each begins where the one before it ends. */
const pieces = inOrder(
  z.array(piece).nonempty(),
  (before, it) => top(it) <= top(before),
  'a piece must end above the piece before it',
)

const rows = inOrder(
  z.array(z.strictObject({ bedrooms: z.int().positive(), gal: positive })).nonempty(),
  (before, it) => it.bedrooms <= before.bedrooms,
  'bedroom counts must rise row by row',
  'bedrooms',
)

const flow = designFlow.nullish().transform((value) => value ?? null)

const more = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('open-top') }),
  z.strictObject({ rule: z.literal('add-per-bedroom'), gal: positive }),
  z.strictObject({ rule: z.literal('by-flow'), flow, pieces }),
  z.strictObject({ rule: z.literal('not-stated') }),
])

const burdens = z.array(z.enum(BURDENS)).nonempty()
const byFactor = z.strictObject({ when: burdens, factor: positive })
const byGallons = z.strictObject({ when: burdens, addGal: positive })

const shared = {
  table: z.string().min(1),
  minimumGal: z.number().nonnegative().default(0),
  adjustments: z
    .lazy(() =>
      z.array(z.union([byFactor, byGallons, z.strictObject({ when: burdens, rule: capacityRule })])),
    )
    .default([]),
}

export const capacityRule: z.ZodType<CapacityRule> = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('bedrooms'), ...shared, rows, more }),
  z.strictObject({ by: z.literal('flow'), ...shared, flow, pieces }),
  z.strictObject({
    by: z.literal('largest-of'),
    ...shared,
    rules: z.lazy(() => z.array(capacityRule).nonempty()),
  }),
]) as never
