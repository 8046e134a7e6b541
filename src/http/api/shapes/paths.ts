import { z } from 'zod'

const county = z
  .string()
  .regex(/^[a-z][a-z0-9-]{1,39}$/, 'is not the name of a county: lower-case letters, figures and hyphens')
  .meta({ description: 'The county, by its name in addresses', examples: ['quillback'] })

const parcel = z
  .string()
  .min(1)
  .max(80, 'at most 80 characters')
  .refine(
    (text) => text.isWellFormed() && !/[\u0000-\u001f\u007f]/.test(text),
    'contains characters that cannot be stored',
  )
  .meta({
    description: 'The parcel: its number in any spelling, an old number, or its id',
    examples: ['07-0412-0031'],
  })

const id = z
  .guid('is not an id')
  .meta({ description: 'An id, as this service gave it', examples: ['01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11'] })

/** Paths, by what they name. */
export const countyPath = z.object({ county })
export const parcelPath = z.object({ county, parcel })
export const idPath = z.object({ county, id })
