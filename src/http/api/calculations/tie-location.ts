import { z } from 'zod'
import { SIDES } from '../../../catalog/choices.ts'
import { REFERENCE, TIE } from '../../../catalog/places.ts'
import { ACCURACY_MEANINGS } from '../../../geometry/position/gps-fix.ts'
import { uncertain } from '../../../measure/uncertain.ts'
import type { TieLocationAnswer, TieLocationAsked } from '../../../operations/calculations/tie-location.ts'
import { foundField } from '../../../reading/entry/found-field.ts'
import { step } from '../shapes/basics.ts'
import { presentRegion, regionShape } from '../shapes/region.ts'
import { presentSteps } from './shapes.ts'

const baseline = foundField(REFERENCE.parts.baseline)
const tie = foundField(TIE.parts.a)
const foot = z.number().min(-5280).max(5280)
const latitude = z.number().min(-89).max(89)
const longitude = z.number().min(-180).max(180)

/** A compass held along a wall: ±5° (common practice), nothing known between. */
const COMPASS_U = 5 / Math.sqrt(3)

export const tieLocationBody = z
  .strictObject({
    baseline: baseline.meta({ description: 'Between the corners A and B of one wall' }),
    a: tie.meta({ description: 'From corner A: on the left, facing the wall from outside' }),
    b: tie.meta({ description: 'From corner B' }),
    side: z
      .enum(SIDES)
      .optional()
      .meta({ description: 'Away from the house or toward it; leave out if not stated' }),
    more: z
      .array(
        z.strictObject({
          corner: z.string().min(1).max(80),
          xFt: foot.meta({ description: 'Of that corner, from A toward B' }),
          yFt: foot.meta({ description: 'Of that corner, away from the house; negative behind the wall' }),
          tie,
        }),
      )
      .max(10)
      .optional()
      .meta({ description: 'Ties from further corners: all take part in one estimate' }),
    satellite: z
      .strictObject({
        lat: latitude,
        lon: longitude,
        accuracyM: z.number().positive().max(10_000).meta({ description: 'As the receiver states it' }),
        meaning: z.enum(ACCURACY_MEANINGS).default('68-percent-circle'),
        cornerA: z.strictObject({
          lat: latitude,
          lon: longitude,
          accuracyM: z.number().positive().max(10_000).optional().meta({
            description: 'Left out: as good as the fix of the thing',
          }),
        }),
        bearingDeg: z.number().min(0).lt(360).meta({ description: 'Compass, from A to B' }),
      })
      .optional()
      .meta({ description: 'A satellite fix of the thing: it takes part by its stated accuracy' }),
  })
  .meta({
    id: 'TieLocationQuestion',
    examples: [{ baseline: '36\'-1"', a: '18\'-4"', b: '27\'-2"', side: 'away' }],
  })

export const askedTieLocation = ({
  more,
  satellite,
  side,
  ...taped
}: z.output<typeof tieLocationBody>): TieLocationAsked => ({
  ...taped,
  side: side ?? null,
  more: more ?? [],
  satellite: satellite
    ? {
        ...satellite,
        // The corner's own error moves the thing in the frame as much as the thing's does.
        accuracyM: Math.hypot(satellite.accuracyM, satellite.cornerA.accuracyM ?? satellite.accuracyM),
        frame: {
          cornerA: { latDeg: satellite.cornerA.lat, lonDeg: satellite.cornerA.lon },
          bearingDeg: uncertain(satellite.bearingDeg, COMPASS_U, 'compass'),
        },
      }
    : null,
})

export const tieLocationAnswer = z
  .object({
    places: z
      .array(
        z.object({
          side: z.enum(SIDES),
          xFt: z.number().meta({ description: 'From corner A toward corner B' }),
          yFt: z.number().meta({ description: 'Away from the house' }),
          region: regionShape,
        }),
      )
      .meta({
        description:
          'Two ties give two places, one on each side of the wall’s line, unless the side is given or further readings tell it',
      }),
    sightAngleDeg: z.number(),
    geometry: z.enum(['sound', 'weak', 'flat']),
    leftover: z
      .array(z.object({ of: z.string(), ft: z.number(), expandedFt: z.number() }))
      .meta({ description: 'What each reading leaves over at the place, where there are more than two' }),
    suspects: z.array(z.string()).meta({
      description:
        'The readings of which one must be wrong; several where the evidence does not tell them apart',
    }),
    steps: z.array(step),
  })
  .meta({ id: 'TieLocation', description: 'Where ties put a thing, with the ground that holds it' })

export const presentTieLocation = (it: TieLocationAnswer): z.output<typeof tieLocationAnswer> => ({
  places: it.places.map(({ side, x, y, region }) => ({
    side,
    xFt: x,
    yFt: y,
    region: presentRegion(region),
  })),
  sightAngleDeg: it.sightAngleDeg,
  geometry: it.geometry,
  leftover: it.leftover.map((one) => ({ ...one })),
  suspects: [...it.suspects],
  steps: presentSteps(it.steps),
})
