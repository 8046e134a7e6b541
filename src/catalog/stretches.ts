import { LINE_DEFECTS, LINE_STARTS, MATERIALS } from './choices.ts'
import type { Field } from './field.ts'
import { LINES } from './kinds.ts'
import { CAMERA, RULE } from './ways.ts'

const LINE = [{ kinds: LINES }] as const

/** A distance along a line from where its distances start: what a camera's counter shows. */
const STATION = {
  value: 'length',
  unit: 'ft',
  ways: CAMERA,
  possible: [0, 10_000],
  plausible: [0, 1000],
} as const

/** Where the distances along a line start. Without it a stretch lies nowhere. */
export const MEASURED_FROM = {
  value: 'choice',
  choices: LINE_STARTS,
  by: 'both',
  asBuilt: 'measure',
  section: 'size',
  on: LINE,
} as const satisfies Field

/**
 * One line of two materials is one line: a splice under a driveway, half of it laid new. Each stretch runs from a
 * station to a station; what no stretch covers is as the line itself is said to be.
 */
export const SEGMENTS = {
  value: 'rows',
  most: 8,
  by: 'both',
  asBuilt: 'measure',
  section: 'size',
  on: LINE,
  parts: {
    from: { ...STATION, by: 'both', needed: true, example: '0 ft' },
    to: { ...STATION, by: 'both', needed: true, example: '31 ft' },
    material: { value: 'choice', choices: MATERIALS, by: 'both' },
    pipeDiameter: {
      value: 'length',
      unit: 'ft',
      ways: RULE,
      possible: [0, 10],
      open: 'least',
      plausible: [1 / 12, 1],
      by: 'both',
      example: '4 in',
    },
  },
} as const satisfies Field

/** What a camera saw wrong, and where: at one station, or from it to another. */
export const DEFECTS = {
  value: 'rows',
  most: 12,
  by: 'inspection',
  section: 'state',
  on: LINE,
  parts: {
    at: { ...STATION, by: 'inspection', needed: true, example: '42 ft' },
    to: { ...STATION, by: 'inspection', example: '45 ft' },
    seen: { value: 'choice', choices: LINE_DEFECTS, by: 'inspection', needed: true },
  },
} as const satisfies Field
