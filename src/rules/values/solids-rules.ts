import { z } from 'zod'
import { type Citation, citation } from '../citation.ts'

/** Distances a solids rule may limit, inches; each from the solids to a point of the outlet device. */
export const SOLIDS_DISTANCES = [
  'sludge-top-to-outlet-bottom',
  'scum-bottom-to-outlet-bottom',
  'scum-top-to-outlet-top',
] as const

export type SolidsCondition =
  | {
      readonly when: 'distance-at-most'
      readonly distance: (typeof SOLIDS_DISTANCES)[number]
      readonly inches: number
    }
  | {
      readonly when: 'sludge-distance-at-most-by-tank'
      readonly rows: readonly {
        readonly gal: number
        readonly liquidDepthFt: number
        readonly inches: number
      }[]
    }
  | { readonly when: 'share-above'; readonly of: 'liquid-depth'; readonly pct: number }

/** Pump when any of the conditions holds. */
export type SolidsRule = {
  readonly id: string
  readonly name: string
  readonly anyOf: readonly [SolidsCondition, ...SolidsCondition[]]
  readonly citations: readonly [Citation, ...Citation[]]
}

const positive = z.number().positive()

const condition = z.discriminatedUnion('when', [
  z.strictObject({
    when: z.literal('distance-at-most'),
    distance: z.enum(SOLIDS_DISTANCES),
    inches: positive,
  }),
  z.strictObject({
    when: z.literal('sludge-distance-at-most-by-tank'),
    rows: z.array(z.strictObject({ gal: positive, liquidDepthFt: positive, inches: positive })).nonempty(),
  }),
  z.strictObject({ when: z.literal('share-above'), of: z.literal('liquid-depth'), pct: positive }),
])

export const solidsRules: z.ZodType<readonly SolidsRule[]> = z
  .array(
    z.strictObject({
      id: z.string().min(1),
      name: z.string().min(1),
      anyOf: z.array(condition).nonempty(),
      citations: z.array(citation).nonempty(),
    }),
  )
  .nonempty() as never
