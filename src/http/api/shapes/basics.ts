import { z } from 'zod'
import { VERIFIED } from '../../../rules/citation.ts'

/** Pieces of answers that need no more than a line each. */

export const id = z.string().meta({ format: 'uuid', examples: ['01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11'] })
export const day = z.string().meta({ format: 'date', description: 'ISO 8601', examples: ['1974-06-20'] })
export const partialDay = z.string().meta({
  description: 'A day as far as it is known: YYYY-MM-DD, YYYY-MM or YYYY (ISO 8601)',
  examples: ['1974-06-20', '1977-09', '1977'],
})
export const instant = z
  .string()
  .meta({ format: 'date-time', description: 'ISO 8601, UTC', examples: ['2026-11-25T09:30:00.000Z'] })
export const hash = z.string().meta({
  description: 'SHA-256 of the canonical JSON (RFC 8785)',
  examples: ['9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08'],
})

export const step = z
  .object({ says: z.string(), formula: z.string(), numbers: z.string(), result: z.string() })
  .meta({
    id: 'Step',
    description: 'One line of working: what it is, the formula, the same with numbers, the result',
    examples: [
      {
        says: 'In US gallons, 231 cu in each',
        formula: 'gal = V × 1728 ÷ 231',
        numbers: '135.778 cu ft × 1728 ÷ 231',
        result: '1015.69 gal',
      },
    ],
  })

export const citation = z
  .object({
    authority: z.string(),
    document: z.string(),
    edition: z.string().nullable(),
    section: z.string().nullable(),
    covers: z.string().nullable().meta({ description: 'The part of the value that it covers' }),
    words: z.string().nullable().meta({ description: 'The words relied on' }),
    readAt: z.string().nullable(),
    verified: z.enum(VERIFIED).meta({ description: 'Whether the source itself was read' }),
  })
  .meta({ id: 'Citation', description: 'Where a value is printed, and whether its source was verified' })
