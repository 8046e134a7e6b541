import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
import { SETBACK_FROM, SETBACK_TO, type SetbackFrom, type SetbackTo } from '../things.ts'
import { distinct } from './list-checks.ts'

/** Least horizontal distance in feet. `when` narrows the row in the source's words ("if the local authority allows"). */
export type SetbackRow = {
  readonly from: SetbackFrom
  readonly to: SetbackTo
  readonly ft: number
  readonly when: string | null
}

export type SetbackTable = { readonly table: string; readonly rows: NonEmpty<SetbackRow> }

const row = z.strictObject({
  from: z.enum(SETBACK_FROM),
  to: z.enum(SETBACK_TO),
  ft: z.number().nonnegative(),
  when: z
    .string()
    .min(1)
    .nullish()
    .transform((value) => value ?? null),
})

const nameOf = ({ from, to, when }: SetbackRow): string =>
  `${from} to ${to}${when === null ? '' : ` ${when}`}`

export const setbackTable: z.ZodType<SetbackTable> = z.strictObject({
  table: z.string().min(1),
  rows: distinct(z.array(row).nonempty(), nameOf, 'the row'),
}) as never
