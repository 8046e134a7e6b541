import { DISCHARGES, DYE, GROUND, LEFT_OUT_REASONS, NOT_REACHED_REASONS, OCCUPANCY } from './choices.ts'
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
    value: 'partial-date',
    by: 'inspection',
    example: '2024-05-01',
    aliases: ['pumped', 'last pumped', 'pump date'],
  },
  /** Days nobody had lived there by the day of the inspection. */
  daysVacant: {
    value: 'whole',
    possible: [0, 20_000],
    plausible: [0, 3650],
    by: 'inspection',
    aliases: ['days vacant'],
  },
  /** The worst seen walking the drainfield and around the tank. */
  ground: { value: 'choice', choices: GROUND, by: 'inspection', aliases: ['ground', 'surface'] },
  notWalkedBecause: { value: 'choice', choices: NOT_REACHED_REASONS, by: 'inspection' },
  /** Why a part on record, or a question about the whole system, was left out. */
  leftOutBecause: { value: 'choice', choices: LEFT_OUT_REASONS, by: 'inspection' },
  backup: { value: 'flag', by: 'inspection', aliases: ['backup', 'sewage backup'] },
  discharge: { value: 'choice', choices: DISCHARGES, by: 'inspection', aliases: ['discharge'] },
  /** Liquid came back out of the outlet while the tank was pumped. */
  runBack: { value: 'flag', by: 'inspection', aliases: ['run back', 'backflow'] },
  dye: { value: 'choice', choices: DYE, by: 'inspection', aliases: ['dye test', 'dye'] },
  reference: REFERENCE,
  notes: { value: 'prose', most: 10_000, by: 'inspection', aliases: ['remarks', 'comments'] },
} as const satisfies Fields
