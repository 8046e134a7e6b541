import { z } from 'zod'

/** A lone surrogate: no text can hold it, and no database. */
const HALF = 'holds half of a character: write it again'

/** One line of text as a person types it: trimmed, without control characters, at most `most` characters. */
export const line = (most: number) =>
  z
    .string()
    .trim()
    .min(1, 'write something, or leave the field out')
    .max(most, `at most ${most} characters`)
    .refine((text) => !/[\u0000-\u001f\u007f]/.test(text), 'no control characters or line breaks')
    .refine((text) => text.isWellFormed(), HALF)

/** Free text: line breaks and tabs kept, other control characters refused. */
export const prose = (most: number) =>
  z
    .string()
    .max(most, `at most ${most} characters`)
    .refine((text) => !/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/.test(text), 'no control characters')
    .refine((text) => text.isWellFormed(), HALF)

/** A field that may be left out or sent as null: null in the record. */
export const optional = <T extends z.ZodType>(type: T) => type.nullish().transform((value) => value ?? null)
