import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
import { SOLIDS_DISTANCES, type SolidsDistance } from '../../geometry/solids/solids-readings.ts'
import type { SolidsRule as PlainRule } from '../../geometry/solids/solids-rule.ts'
import { type Citation, citation } from '../citation.ts'
import { distinct } from './list-checks.ts'

/** A rule as a pack carries it: the arithmetic's own rule, and where it was printed. */
export type SolidsRule = PlainRule & { readonly citations: NonEmpty<Citation> }

const positive = z.number().positive()

const distances = Object.keys(SOLIDS_DISTANCES) as [SolidsDistance, ...SolidsDistance[]]

const condition = z.discriminatedUnion('when', [
  z.strictObject({ when: z.literal('distance-at-most'), distance: z.enum(distances), inches: positive }),
  z.strictObject({
    when: z.literal('sludge-distance-at-most-by-tank'),
    rows: z.array(z.strictObject({ gal: positive, liquidDepthFt: positive, inches: positive })).nonempty(),
  }),
  z.strictObject({ when: z.literal('share-above'), of: z.literal('liquid-depth'), pct: positive }),
])

/** Rules that conflict stand side by side, each under its own id and name. */
export const solidsRules: z.ZodType<readonly SolidsRule[]> = distinct(
  z
    .array(
      z.strictObject({
        id: z.string().min(1),
        name: z.string().min(1),
        anyOf: z.array(condition).nonempty(),
        citations: z.array(citation).nonempty(),
      }),
    )
    .nonempty(),
  (it) => it.id,
  'id',
  'id',
) as never
