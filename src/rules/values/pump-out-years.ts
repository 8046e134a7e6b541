import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
import { inOrder } from './list-checks.ts'

/** Years between pumpings by tank size and people in year-round residence; null where the table prints a dash. */
export type PumpOutYears = {
  readonly table: string
  readonly people: NonEmpty<number>
  readonly rows: NonEmpty<{ readonly gal: number; readonly years: NonEmpty<number | null> }>
}

const people = inOrder(
  z.array(z.int().positive()).nonempty(),
  (before, it) => it <= before,
  'people must rise',
)

const rows = inOrder(
  z
    .array(
      z.strictObject({
        gal: z.number().positive(),
        years: z.array(z.number().positive().nullable()).nonempty(),
      }),
    )
    .nonempty(),
  (before, it) => it.gal <= before.gal,
  'tank sizes must rise row by row',
  'gal',
)

export const pumpOutYears: z.ZodType<PumpOutYears> = z
  .strictObject({ table: z.string().min(1), people, rows })
  .superRefine(({ people, rows }, context) => {
    for (const [i, row] of rows.entries())
      if (row.years.length !== people.length)
        context.addIssue({
          code: 'custom',
          path: ['rows', i, 'years'],
          message: `has ${row.years.length} columns where people has ${people.length}`,
        })
  }) as never
