import { z } from 'zod'
import { type PlainDate, plainDate } from '../base/plain-date.ts'

/** A day in a pack, `YYYY-MM-DD`, refused with the reason where it is none. */
export const day: z.ZodType<PlainDate> = z.string().superRefine((text, context) => {
  const parsed = plainDate(text)
  if (!parsed.ok) context.addIssue({ code: 'custom', message: parsed.error })
}) as never

/** Null (or left out) is open: no known beginning, or still in force. */
export const dayOrOpen: z.ZodType<PlainDate | null> = day.nullish().transform((value) => value ?? null)
