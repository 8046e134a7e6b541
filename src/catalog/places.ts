import { COVERAGES, SIDES, WALLS } from './choices.ts'
import type { Field } from './field.ts'
import { GROUND } from './ways.ts'

/** No lot that a house corner is taped from is wider (common practice); a mile is refused. */
const ON_A_LOT = { possible: [0, 5280], plausible: [1, 300] } as const
const TAPED = { value: 'length', unit: 'ft', ways: GROUND, by: 'both', ...ON_A_LOT } as const

/** Two distances, one from each reference corner, and the side where it was said. */
export const TIE = {
  value: 'group',
  by: 'both',
  asBuilt: 'measure',
  parts: {
    a: { ...TAPED, needed: true, example: '18\'-6"' },
    b: { ...TAPED, needed: true, example: '27\'-0"' },
    side: { value: 'choice', choices: SIDES, by: 'both' },
    sideWords: { value: 'line', most: 80, by: 'both', example: 'rear of house' },
  },
} as const satisfies Field

/**
 * The two house corners that ties run from. Both are corners of one wall; facing that wall from outside, A is on the
 * left and B on the right. The local frame has its origin at A, x toward B, y away from the house.
 */
export const REFERENCE = {
  value: 'group',
  by: 'both',
  parts: {
    a: { value: 'line', most: 80, by: 'both', needed: true, example: 'rear left corner' },
    b: { value: 'line', most: 80, by: 'both', needed: true, example: 'rear right corner' },
    baseline: { ...TAPED, example: '36 ft' },
    wall: { value: 'choice', choices: WALLS, by: 'both' },
    bearingDeg: {
      value: 'number',
      unit: 'degrees',
      possible: [0, 360],
      open: 'most',
      by: 'both',
      example: 90,
    },
  },
} as const satisfies Field

/** A satellite fix: the receiver's stated radius and what share of fixes it says lie inside it. */
export const FIX = {
  value: 'group',
  by: 'inspection',
  parts: {
    lat: {
      value: 'number',
      unit: 'degrees',
      possible: [-90, 90],
      by: 'inspection',
      needed: true,
      example: 41.5,
    },
    lon: {
      value: 'number',
      unit: 'degrees',
      possible: [-180, 180],
      by: 'inspection',
      needed: true,
      example: -90.125,
    },
    radiusFt: {
      value: 'number',
      unit: 'ft',
      possible: [0, 10_000],
      open: 'least',
      plausible: [0.05, 100],
      by: 'inspection',
      needed: true,
      example: 16,
    },
    coverage: { value: 'choice', choices: COVERAGES, default: 0.68, by: 'inspection' },
  },
} as const satisfies Field
