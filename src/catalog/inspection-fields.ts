import { DISCHARGES, DYE, GROUND, LEFT_OUT_REASONS, NOT_REACHED_REASONS, OCCUPANCY, RAIN } from './choices.ts'
import type { Fields } from './field.ts'
import { FIX, REFERENCE } from './places.ts'

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
  /** Water run in to load the system, and for how long. */
  testVolume: {
    value: 'volume',
    unit: 'gal',
    possible: [0, 10_000],
    plausible: [20, 1000],
    by: 'inspection',
    example: '150 gal',
    aliases: ['test volume', 'flow test'],
  },
  testMinutes: {
    value: 'whole',
    possible: [0, 1440],
    plausible: [5, 240],
    by: 'inspection',
    aliases: ['test minutes'],
  },
  rain: { value: 'choice', choices: RAIN, by: 'inspection', aliases: ['rain', 'weather'] },
  /** Ground water stands at the depth of the drainfield, as seen in a hole, a pit or a port. */
  groundWaterHigh: { value: 'flag', by: 'inspection' },
  /** By the meter, over a year where there is a year of it. */
  waterUseGpd: {
    value: 'number',
    unit: 'gpd',
    possible: [0, 100_000],
    plausible: [20, 2000],
    by: 'inspection',
    aliases: ['water use', 'metered use'],
  },
  disposer: { value: 'flag', by: 'inspection', aliases: ['garbage disposer', 'garbage grinder'] },
  softener: { value: 'flag', by: 'inspection', aliases: ['water softener'] },
  /** A sump, a roof or a footing drain. */
  clearWater: { value: 'flag', by: 'inspection', aliases: ['sump pump', 'roof drain'] },
  vehiclesOver: { value: 'flag', by: 'inspection' },
  builtOver: { value: 'flag', by: 'inspection' },
  rootsIn: { value: 'flag', by: 'inspection' },
  drainsOnto: { value: 'flag', by: 'inspection' },
  /** Systems beside the one inspected, and lots beside this one. */
  secondSystem: { value: 'flag', by: 'inspection', aliases: ['second system'] },
  servesAnotherLot: { value: 'flag', by: 'inspection', aliases: ['shared system'] },
  liesOnAnotherLot: { value: 'flag', by: 'inspection', aliases: ['on another lot'] },
  reference: REFERENCE,
  /** Where the corners lie on the earth: a fix of a part then takes part with its ties. B's gives the bearing. */
  cornerA: FIX,
  cornerB: FIX,
  notes: { value: 'prose', most: 10_000, by: 'inspection', aliases: ['remarks', 'comments'] },
} as const satisfies Fields
