import { z } from 'zod'
import { METHOD_NAMES } from '../../../measure/methods.ts'
import type { StatedLength } from '../../../measure/parse/length.ts'
import type { StatedVolume } from '../../../measure/parse/volume.ts'
import type { FoundLength } from '../../../records/quantity.ts'

/** Lengths and volumes in answers: the value under the name of its unit, and as the person wrote it. */

export const statedLength = z.object({ ft: z.number(), asWritten: z.string() }).meta({
  id: 'Length',
  description: 'In feet, and as written',
  examples: [{ ft: 4.5, asWritten: '4\'-6"' }],
})
export const presentLength = ({ ft, asWritten }: StatedLength): z.output<typeof statedLength> => ({
  ft,
  asWritten,
})

export const foundLength = z
  .object({ ft: z.number(), asWritten: z.string(), method: z.enum(METHOD_NAMES), instrument: z.string() })
  .meta({
    id: 'FoundLength',
    description: 'In feet, as written, and how it was taken with what',
    examples: [
      { ft: 7.833333333333333, asWritten: '7\'-10"', method: 'inside-tape', instrument: 'inside-tape' },
    ],
  })
export const presentFound = ({
  ft,
  asWritten,
  method,
  instrument,
}: FoundLength): z.output<typeof foundLength> => ({ ft, asWritten, method, instrument })

export const volume = z.object({ gal: z.number(), asWritten: z.string() }).meta({
  id: 'Volume',
  description: 'In US gallons, and as written',
  examples: [{ gal: 1000, asWritten: '1,000 gal' }],
})
export const presentVolume = ({ gal, asWritten }: StatedVolume): z.output<typeof volume> => ({
  gal,
  asWritten,
})
