import { z } from 'zod'
import { MATERIALS, type Reference, SIDES, type Side, VESSEL_SHAPES, WALLS } from '../../records/component.ts'
import { line } from './fields.ts'
import { volumeEntry } from './quantity.ts'

const whole = (most: number) => z.number().int('a whole number').positive('at least 1').max(most)

/** A field that may be left out or sent as null: null in the record. */
export const optional = <T extends z.ZodType>(type: T) => type.nullish().transform((value) => value ?? null)

/** The measures of a component, with lengths in the caller's form (as written, or with a method). */
export const measureEntries = <L extends z.ZodType>(length: L) => ({
  shape: optional(z.enum(VESSEL_SHAPES)),
  length: optional(length),
  width: optional(length),
  diameter: optional(length),
  liquidDepth: optional(length),
  insideHeight: optional(length),
  wallThickness: optional(length),
  effectiveDepth: optional(length),
  depthToTop: optional(length),
  pipeDiameter: optional(length),
  capacity: optional(volumeEntry),
  compartments: optional(whole(9)),
  count: optional(whole(99)),
  material: optional(z.enum(MATERIALS)),
  tie: optional(
    z.strictObject({
      a: length.meta({ description: 'Distance from reference corner A' }),
      b: length.meta({ description: 'Distance from reference corner B' }),
      side: optional(z.enum(SIDES)),
      sideWords: optional(line(80)),
    }),
  ),
})

export const referenceEntry = <L extends z.ZodType>(length: L) =>
  z
    .strictObject({
      a: line(80),
      b: line(80),
      baseline: optional(length),
      wall: optional(z.enum(WALLS)),
      bearingDeg: optional(z.number().min(0).lt(360)),
    })
    .meta({
      description:
        'The two house corners ties run from, both of one wall: facing it from outside, A is left and B is right',
    })

/**
 * The side a phrase means, given the wall the corners belong to: "rear of house" is away from a rear wall and toward
 * the house from a front wall. Null where the words do not settle it.
 */
export function sideFromWords(words: string | null, wall: Reference<unknown>['wall']): Side | null {
  if (words === null || wall === null) return null
  const text = words.toLowerCase()
  const named = [...text.matchAll(/\b(front|rear|back|behind|left|right)\b/g)].map(([word]) =>
    word === 'back' || word === 'behind' ? 'rear' : word,
  )
  if (new Set(named).size !== 1) return null
  const opposite = { front: 'rear', rear: 'front', left: 'right', right: 'left' } as const
  if (named[0] === wall) return 'away'
  return named[0] === opposite[wall] ? 'toward' : null
}
