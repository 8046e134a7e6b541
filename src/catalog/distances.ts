import type { Fields } from './field.ts'
import { ABSORPTION_KINDS, type ComponentKind, LINES, VESSELS } from './kinds.ts'
import { GROUND } from './ways.ts'

/** Parts that a code keeps away from other things. */
export const KEPT_APART = [
  ...VESSELS,
  'media-filter',
  'disinfection-unit',
  'laundry-system',
  'cesspool',
  'privy',
  'distribution-box',
  ...LINES,
  ...ABSORPTION_KINDS,
] as const satisfies readonly ComponentKind[]

const DISTANCE = {
  value: 'length',
  unit: 'ft',
  ways: GROUND,
  possible: [0, 5280],
  plausible: [0.5, 500],
  by: 'both',
  asBuilt: 'measure',
  section: 'distances',
  example: '60 ft',
  on: [{ kinds: KEPT_APART }],
} as const

/**
 * From the nearest edge of a part to the nearest of what it has to keep away from: as a permit states it, or as an
 * inspection tapes it. No tie tells where a lot line or a pond lies, and a distance taped straight across is worth more than
 * one that two places leave.
 */
export const DISTANCES = {
  toWell: { ...DISTANCE, example: '110 ft', aliases: ['distance to well', 'setback well', 'to well'] },
  toPublicWell: { ...DISTANCE, plausible: [0.5, 1000], aliases: ['distance to public well'] },
  toSpring: { ...DISTANCE, aliases: ['distance to spring'] },
  toBuilding: {
    ...DISTANCE,
    example: '14 ft',
    aliases: ['distance to house', 'distance to building', 'distance to foundation', 'to house'],
  },
  toPropertyLine: {
    ...DISTANCE,
    example: '12 ft',
    aliases: [
      'distance to property line',
      'distance to lot line',
      'setback property line',
      'to property line',
    ],
    on: [{ kinds: [...KEPT_APART, 'well'] }],
  },
  toSurfaceWater: { ...DISTANCE, aliases: ['distance to surface water', 'distance to water', 'to water'] },
  toStream: { ...DISTANCE, aliases: ['distance to stream', 'distance to ditch'] },
  toWetland: { ...DISTANCE, aliases: ['distance to wetland'] },
  toWaterLine: {
    ...DISTANCE,
    aliases: ['distance to water line', 'distance to water service', 'to water line'],
  },
  toSuctionLine: { ...DISTANCE, aliases: ['distance to suction line'] },
  toPool: { ...DISTANCE, aliases: ['distance to pool', 'distance to swimming pool'] },
  toDrain: { ...DISTANCE, aliases: ['distance to drain', 'distance to foundation drain'] },
  toCut: { ...DISTANCE, aliases: ['distance to cut', 'distance to bank', 'distance to slope'] },
  toOtherSystem: { ...DISTANCE, aliases: ['distance to other system', 'distance to neighboring system'] },
} as const satisfies Fields
export type DistanceName = keyof typeof DISTANCES
export const DISTANCE_NAMES = Object.keys(DISTANCES) as readonly DistanceName[]
