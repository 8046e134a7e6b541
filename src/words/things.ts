import { MEASURE_NAMES, type MeasureName, SYSTEM_FIELDS, type SystemField } from '../catalog/catalog.ts'
import { METHODS, type Method } from '../measure/methods.ts'
import { printLength } from '../measure/print/length.ts'
import type { Construction } from '../reconcile/construction.ts'
import type { ExhibitSource } from '../reconcile/outcome.ts'
import type { Shown, Thing } from '../reconcile/thing.ts'
import { printDate } from './date.ts'
import { fieldNoun } from './fields.ts'
import { choiceWords, SEARCH_NOUNS, START_NOUNS } from './nouns.ts'
import { figure } from './quantity.ts'
import { counted, listed } from './sentence.ts'
import { stretchWords } from './stretches.ts'

type OwnThing = Exclude<Thing, MeasureName | SystemField>

/** What of a tank's construction a rule asks for. */
export const CONSTRUCTION_NOUNS: { readonly [C in Construction]: string } = {
  'liquid-depth': 'liquid depth',
  freeboard: 'freeboard',
  wall: 'wall thickness',
  'invert-drop': 'drop from the inlet invert to the outlet invert',
  'inlet-below': 'depth of the inlet device below the liquid',
  'outlet-below': 'depth of the outlet device below the liquid',
  'outlet-share': 'depth of the outlet device, as a share of the liquid depth',
  'outlet-above': 'height of the outlet device above the liquid',
}

/** What is no field of the catalog, or is called otherwise where it is evidence. */
const OWN: { readonly [T in OwnThing]: string } = {
  sign: 'sign of failure',
  pump: 'pump or blower',
  alarm: 'alarm',
  floats: 'floats',
  timer: 'timer',
  wiring: 'wiring',
  disinfection: 'disinfection',
  contract: 'service contract',
  burden: 'what lies over the drainfield',
  testVolume: 'water run in for the test',
  'inside-length': 'inside length',
  'inside-width': 'inside width',
  'inside-diameter': 'inside diameter',
  'liquid-depth-to-invert': 'liquid depth to the outlet invert',
  presence: 'presence',
  kind: 'type',
  condition: 'condition',
  defect: 'defect along the line',
  cover: 'cover',
  top: 'top',
  level: 'liquid level',
  scumThickness: 'scum thickness',
  scumBottomBelow: 'bottom of the scum below the liquid level',
  sludgeDepth: 'sludge depth',
  roomBelowTop: 'room left over the contents',
  outletDeviceBelow: 'bottom of the outlet device below the invert',
  outletDeviceAbove: 'top of the outlet device above the invert',
  lastPumpedOn: 'last pumping',
  people: 'number of people living there',
  'pumped-since': 'years since the last pumping',
  'pump-out-years': 'years between pumpings',
  inletAboveOutlet: 'inlet invert against the outlet invert',
  inletDeviceBelow: 'bottom of the inlet device below the outlet invert',
  'first-compartment': 'length of the first compartment',
  ...CONSTRUCTION_NOUNS,
  baseline: 'baseline between corners A and B',
  fix: 'satellite fix',
  'corner-fix': 'satellite fix of a corner',
  'capacity-by-readings': 'capacity from the inspection’s readings',
  'capacity-by-record': 'capacity from the dimensions on record',
  'least-capacity': 'minimum capacity',
  'nominal-tolerance': 'tolerance for nominal sizes',
  'absorption-area': 'absorption area',
  distance: 'distance',
  permitted: 'permit date',
  'age-limit': 'age limit of a metal tank',
  'counts-until': 'counts for a transfer until',
  'usual-wall': 'wall thickness, assumed',
  'solids-share': 'scum and sludge',
  'sludge-top-to-outlet-bottom': 'sludge to the bottom of the outlet device',
  'scum-bottom-to-outlet-bottom': 'bottom of the scum to the bottom of the outlet device',
  'scum-top-to-outlet-top': 'top of the scum to the top of the outlet device',
}

/** What a fact, a reading or an exhibit is, as a noun without its article. */
export const THING_NOUNS = {
  ...Object.fromEntries(MEASURE_NAMES.map((name) => [name, fieldNoun('component', name)])),
  ...Object.fromEntries(SYSTEM_FIELDS.map((name) => [name, fieldNoun('permit', name)])),
  ...OWN,
} as { readonly [T in Thing]: string }

const WALLS = { precast: 'a precast wall', shell: 'a thin shell', masonry: 'a masonry wall' } as const
const LIMITS = { 'at-most': 'at most', 'more-than': 'more than', 'at-least': 'at least' } as const

/** A value as it was used. */
export function shown(it: Shown): string {
  if ('choice' in it) return choiceWords(it.choice)
  if ('count' in it) return String(it.count)
  if ('day' in it) return printDate(it.day)
  if ('ties' in it) {
    const side =
      it.side === null ? 'side not stated' : it.side === 'away' ? 'away from the house' : 'on the house side'
    return `A ${printLength(it.ties[0])}, B ${printLength(it.ties[1])}, ${side}`
  }
  if ('stretches' in it) {
    const start = it.from === null ? '' : `, from ${START_NOUNS[it.from]}`
    return `${listed(it.stretches.map(stretchWords))}${start}`
  }
  if ('fix' in it)
    return `${it.fix[0]}°, ${it.fix[1]}°, good to ${figure(it.radius)} (${figure(it.coverage)} of fixes)`
  if ('limit' in it) return `${LIMITS[it.limit]} ${figure(it.than)}`
  if ('usual' in it)
    return `${figure(it.usual)} ± ${figure(it.halfWidth)}, usual for ${WALLS[it.of]} (common practice)`
  return figure(it)
}

type How = Extract<ExhibitSource, { kind: 'inspection' }>['how']

/** How something was seen or measured. */
export function howTaken(how: How): string {
  switch (how) {
    case 'seen':
      return 'seen by the inspector'
    case 'counted':
      return 'counted in the house'
    case 'by-satellite':
      return 'satellite receiver'
    case 'by-camera':
      return 'seen by camera'
    default:
      return how in METHODS ? METHODS[how as Method].says : SEARCH_NOUNS[how as keyof typeof SEARCH_NOUNS]
  }
}

/** `3 bedrooms`. */
export const bedroomsWords = (count: number): string => counted(count, 'bedroom')
