import { z } from 'zod'
import { METHOD_NAMES, type Method } from '../../measure/methods.ts'
import type { StatedLength } from '../../measure/parse/length.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { line } from './fields.ts'
import { lengthEntry } from './quantity.ts'

/** A length taken in the field: as written, with how it was taken; the default is the one usual for that measure. */
export const foundLength = (usual: Method) =>
  z
    .union([
      lengthEntry.transform((length) => asTaken(length, usual)),
      z
        .strictObject({
          length: lengthEntry,
          method: z.enum(METHOD_NAMES).default(usual),
          instrument: line(40)
            .optional()
            .meta({ description: 'Which tape or rod: two readings by one instrument share its error' }),
        })
        .transform(({ length, method, instrument }) => asTaken(length, method, instrument)),
    ])
    .meta({
      description: `A length as people write it, taken by ${usual}; or {length, method, instrument}`,
      examples: ['7\'-10"', { length: '94 in', method: 'inside-tape' }],
    })

/** Methods without a scale: what is written to the foot was judged to the foot. */
const WITHOUT_A_SCALE: readonly Method[] = ['by-eye', 'pacing']

/**
 * Lengths by the same kind of method on one inspection are taken to be by one instrument, unless another is named. Who tapes
 * 8'-0" writes 8': a reading by a graduated instrument written to the whole foot is one to the inch (common practice);
 * "about 8 ft" is not.
 */
function asTaken(length: StatedLength, method: Method, instrument: string = method): FoundLength {
  const toTheInch = length.halfStepFt > 1 / 6 && !length.approximate && !WITHOUT_A_SCALE.includes(method)
  return { ...length, ...(toTheInch ? { halfStepFt: 1 / 24 } : {}), method, instrument }
}

/** A height above (+) or below (−) something: the outlet invert. */
export const levelEntry = (usual: Method) =>
  z
    .strictObject({
      above: lengthEntry.optional(),
      below: lengthEntry.optional(),
      method: z.enum(METHOD_NAMES).default(usual),
    })
    .refine(
      ({ above, below }) => (above === undefined) !== (below === undefined),
      'write above or below, one of the two',
    )
    .transform(({ above, below, method }): FoundLength => {
      const length = above ?? below!
      return { ...length, ft: above ? length.ft : 0 - length.ft, method, instrument: method }
    })
    .meta({ description: 'A height: above, or below', examples: [{ below: '5 in' }] })
