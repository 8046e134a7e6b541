import { z } from 'zod'
import { METHOD_NAMES } from '../../../measure/methods.ts'
import type { Reference, Tie } from '../../../records/component.ts'
import { SIDES, WALLS } from '../../../records/component.ts'
import type { FoundLength, StatedLength, StatedVolume } from '../../../records/quantity.ts'

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

const tieOf = <L extends z.ZodType>(length: L) =>
  z.object({
    a: length,
    b: length,
    side: z
      .enum(SIDES)
      .nullable()
      .meta({ description: 'Away from the house, or toward it; null where not said' }),
    sideWords: z.string().nullable(),
  })
export const statedTie = tieOf(statedLength).meta({
  id: 'Tie',
  description: 'Distances from corners A and B',
})
export const foundTie = tieOf(foundLength).meta({
  id: 'FoundTie',
  description: 'Distances from corners A and B',
})

export const presentTie = <L, P>({ a, b, side, sideWords }: Tie<L>, present: (length: L) => P) => ({
  a: present(a),
  b: present(b),
  side,
  sideWords,
})

const referenceOf = <L extends z.ZodType>(length: L) =>
  z.object({
    a: z.string(),
    b: z.string(),
    baseline: length.nullable(),
    wall: z.enum(WALLS).nullable(),
    bearingDeg: z.number().nullable(),
  })
const corners = 'The two corners of one wall that ties run from; facing it from outside, A is left'
export const statedReference = referenceOf(statedLength).meta({ id: 'Reference', description: corners })
export const foundReference = referenceOf(foundLength).meta({ id: 'FoundReference', description: corners })

export const presentReference = <L, P>(
  { a, b, baseline, wall, bearingDeg }: Reference<L>,
  present: (length: L) => P,
) => ({ a, b, baseline: orNull(baseline, present), wall, bearingDeg })

export const orNull = <T, P>(value: T | null, present: (value: T) => P): P | null =>
  value === null ? null : present(value)
