import { z } from 'zod'
import { MATERIALS } from '../../../catalog/choices.ts'
import { MEASURES } from '../../../catalog/component-measures.ts'
import { type CapacityAnswer, calculateCapacity } from '../../../operations/calculations/tank-capacity.ts'
import { foundField } from '../../../reading/entry/found-field.ts'
import { foundLength } from '../../../reading/entry/found-length.ts'
import { step } from '../shapes/basics.ts'
import { presentSteps, presentUncertainty, U, uncertainty } from './shapes.ts'

const { length: LENGTH, width: WIDTH, diameter: DIAMETER, insideHeight, liquidDepth } = MEASURES
const length = foundField(LENGTH, 'tank')
const width = foundField(WIDTH, 'tank')
const diameter = foundField(DIAMETER, 'tank')
const height = foundField(insideHeight, 'tank')
const depth = foundField(liquidDepth, 'tank')
const optional = foundLength('inside-tape').optional()

const vessels = [
  z.strictObject({
    kind: z.literal('rectangular'),
    length,
    width,
    liquidDepth: depth,
    floorLength: length.optional().meta({ description: 'Where the walls slope: length at the floor' }),
    floorWidth: width.optional(),
    cornerRadius: optional,
    insideHeight: height.optional(),
  }),
  z.strictObject({
    kind: z.literal('vertical-cylinder'),
    diameter,
    liquidDepth: depth,
    floorDiameter: diameter.optional().meta({ description: 'Where it tapers: diameter at the floor' }),
    insideHeight: height.optional(),
  }),
  z.strictObject({
    kind: z.literal('horizontal-cylinder'),
    diameter,
    length: length.meta({ description: 'The straight part between the heads' }),
    liquidDepth: depth,
    ends: z
      .discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('flat') }),
        z.strictObject({ kind: z.literal('spherical-segment'), rise: length }),
        z.strictObject({ kind: z.literal('elliptical'), rise: optional }),
      ])
      .optional(),
  }),
  z.strictObject({
    kind: z.enum(['horizontal-oval', 'horizontal-ellipse']),
    width,
    height,
    length,
    liquidDepth: depth,
  }),
  z.strictObject({
    kind: z.literal('vertical-oval'),
    length: length.meta({ description: 'Overall, not less than the width' }),
    width,
    liquidDepth: depth,
    insideHeight: height.optional(),
  }),
  z.strictObject({ kind: z.literal('sphere'), diameter, liquidDepth: depth }),
] as const

const vessel = z.discriminatedUnion('kind', vessels)

export const tankCapacityBody = z
  .strictObject({
    shape: z.discriminatedUnion('kind', [
      ...vessels,
      z.strictObject({ kind: z.literal('two-compartments'), first: vessel, second: vessel }),
      z.strictObject({ kind: z.literal('in-series'), tanks: z.array(vessel).min(1).max(9) }),
    ]),
    wallThickness: foundField(MEASURES.wallThickness, 'tank', 'rigid-rule').optional().meta({
      description: 'Subtracted from outside measurements; default: typical for the material',
    }),
    material: z.enum(MATERIALS).optional(),
  })
  .meta({
    id: 'TankCapacityQuestion',
    description:
      'Inside lengths, or outside ones with their method. The liquid depth runs from the floor to the outlet invert, ' +
      'not to the liquid level. Never enter a tank to measure it.',
    examples: [
      {
        shape: {
          kind: 'rectangular',
          length: '7\'-10"',
          width: { length: '52 in', method: 'inside-tape' },
          liquidDepth: { length: '4 ft', method: 'liquid-level-rule' },
        },
      },
      {
        shape: {
          kind: 'horizontal-cylinder',
          diameter: { length: '4\'-0"', method: 'outside-tape' },
          length: { length: '8\'-0"', method: 'outside-tape' },
          liquidDepth: '42 in',
        },
        material: 'steel',
      },
    ],
  })

export const tankCapacityAnswer = z
  .object({
    capacityGal: z.number(),
    expandedUncertaintyGal: z.number(),
    ...uncertainty,
    galPerInch: z.number().meta({ description: 'At the liquid line' }),
    steps: z.array(step),
    better: z
      .array(
        z.object({
          what: z.string(),
          expandedUncertaintyAfterGal: z.number(),
          varianceRemovedPercent: z.number(),
        }),
      )
      .meta({ description: 'The single measurements worth repeating, most useful first' }),
  })
  .meta({ id: 'TankCapacity', description: 'Floor to outlet invert, US gallons' })

export const answerCapacity = (body: z.output<typeof tankCapacityBody>) =>
  calculateCapacity({
    shape: body.shape,
    wallThickness: body.wallThickness ?? null,
    material: body.material ?? null,
  })

export const presentCapacity = ({
  gal,
  galPerInch,
  steps,
  better,
}: CapacityAnswer): z.output<typeof tankCapacityAnswer> => ({
  capacityGal: gal.value,
  expandedUncertaintyGal: U(gal),
  ...presentUncertainty(gal, 'gal'),
  galPerInch: galPerInch.value,
  steps: presentSteps(steps),
  better: better.map(({ what, expandedUncertaintyAfter, varianceRemoved }) => ({
    what,
    expandedUncertaintyAfterGal: expandedUncertaintyAfter,
    varianceRemovedPercent: 100 * varianceRemoved,
  })),
})
