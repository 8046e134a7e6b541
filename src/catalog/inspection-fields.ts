import { OCCUPANCY } from './choices.ts'
import type { Fields } from './field.ts'
import { REFERENCE } from './places.ts'

/** What one inspection says of the day and of the whole system. Its components are in `component-fields.ts`. */
export const INSPECTION_FIELDS = {
  inspectedOn: {
    value: 'date',
    by: 'inspection',
    needed: true,
    example: '2026-10-12',
    aliases: ['inspected', 'inspection', 'inspection date', 'date inspected', 'date'],
  },
  occupancy: {
    value: 'choice',
    choices: OCCUPANCY,
    default: 'unknown',
    by: 'inspection',
    aliases: ['occupied'],
  },
  people: {
    value: 'whole',
    possible: [0, 200],
    plausible: [0, 12],
    by: 'inspection',
    example: 4,
    aliases: ['occupants', 'residents'],
  },
  bedroomsCounted: {
    value: 'whole',
    possible: [0, 50],
    plausible: [1, 8],
    by: 'inspection',
    example: 3,
    aliases: ['bedrooms', 'beds', 'br'],
  },
  lastPumpedOn: {
    value: 'date',
    by: 'inspection',
    example: '2024-05-01',
    aliases: ['pumped', 'last pumped', 'pump date'],
  },
  reference: REFERENCE,
  notes: { value: 'prose', most: 10_000, by: 'inspection', aliases: ['remarks', 'comments'] },
} as const satisfies Fields
