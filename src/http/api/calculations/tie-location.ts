import { z } from 'zod'
import { REFERENCE, TIE } from '../../../catalog/places.ts'
import type { TieLocationAnswer } from '../../../operations/calculations/tie-location.ts'
import { foundField } from '../../../reading/entry/found-field.ts'
import { SIDES } from '../../../records/component.ts'
import { step } from '../shapes/basics.ts'
import { presentSteps } from './shapes.ts'

const baseline = foundField(REFERENCE.parts.baseline)
const tie = foundField(TIE.parts.a)

export const tieLocationBody = z
  .strictObject({
    baseline: baseline.meta({ description: 'Between the corners A and B of one wall' }),
    a: tie.meta({ description: 'From corner A: on the left, facing the wall from outside' }),
    b: tie.meta({ description: 'From corner B' }),
    side: z
      .enum(SIDES)
      .optional()
      .meta({ description: 'Away from the house or toward it; leave out if not stated' }),
  })
  .meta({
    id: 'TieLocationQuestion',
    examples: [{ baseline: '36\'-1"', a: '18\'-4"', b: '27\'-2"', side: 'away' }],
  })

export const tieLocationAnswer = z
  .object({
    places: z
      .array(
        z.object({
          side: z.enum(SIDES),
          xFt: z.number().meta({ description: 'From corner A toward corner B' }),
          yFt: z.number().meta({ description: 'Away from the house' }),
          ellipse: z.object({
            semiMajorFt: z.number(),
            semiMinorFt: z.number(),
            angleDeg: z.number().meta({ description: 'Direction of the major axis, from x toward y' }),
            coverage: z.number(),
          }),
        }),
      )
      .meta({
        description:
          'Two ties give two places, one on each side of the wall’s line, unless the side is given',
      }),
    sightAngleDeg: z.number(),
    geometry: z.enum(['sound', 'weak', 'flat']),
    drmsFt: z.number().meta({ description: 'Distance root mean square: how precise the place is' }),
    steps: z.array(step),
  })
  .meta({ id: 'TieLocation', description: 'Where two ties put a thing, with its error ellipse' })

export const presentTieLocation = (it: TieLocationAnswer): z.output<typeof tieLocationAnswer> => ({
  places: it.places.map(({ side, point, ellipse }) => ({
    side,
    xFt: point.x.value,
    yFt: point.y.value,
    ellipse: {
      semiMajorFt: ellipse.semiMajor,
      semiMinorFt: ellipse.semiMinor,
      angleDeg: ellipse.angleDeg,
      coverage: ellipse.coverage,
    },
  })),
  sightAngleDeg: it.sightAngleDeg,
  geometry: it.geometry,
  drmsFt: it.drmsFt,
  steps: presentSteps(it.steps),
})
