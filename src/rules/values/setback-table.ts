import { z } from 'zod'
import type { NonEmpty } from '../../base/non-empty.ts'
import { SETBACK_FROM, SETBACK_TO, type SetbackFrom, type SetbackTo } from '../things.ts'

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

export const setbackTable: z.ZodType<SetbackTable> = z.strictObject({
  table: z.string().min(1),
  rows: z
    .array(row)
    .nonempty()
    .superRefine((list, context) => {
      const seen = new Set<string>()
      for (const [i, it] of list.entries()) {
        const key = `${it.from} to ${it.to}${it.when === null ? '' : ` when ${it.when}`}`
        if (seen.has(key)) context.addIssue({ code: 'custom', path: [i], message: `${key} stands twice` })
        seen.add(key)
      }
    }),
}) as never
