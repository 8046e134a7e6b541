import {
  CONDITIONS,
  CONTRACTS,
  type Contract,
  DISCHARGES,
  type Discharge,
  DYE,
  type Dye,
  GROUND,
  type Ground,
  LEFT_OUT_REASONS,
  type LeftOutReason,
  LINE_DEFECTS,
  LINE_STARTS,
  type LineDefect,
  type LineStart,
  MATERIALS,
  NOT_REACHED_REASONS,
  type NotReachedReason,
  OCCUPANCY,
  OPENINGS_MADE,
  type OpeningMade,
  PERMIT_ACTIONS,
  PERMIT_KINDS,
  type PermitAction,
  type PermitKind,
  RAIN,
  type Rain,
  RUNS,
  SEARCH_METHODS,
  SEARCH_OUTCOMES,
  type SearchMethod,
  type SearchOutcome,
  SIDES,
  type Side,
  TEST_RESULTS,
  type TestResult,
  VESSEL_SHAPES,
  WALLS,
} from '../catalog/choices.ts'
import { COMPONENT_KINDS, type ComponentKind } from '../catalog/kinds.ts'
import type { Method } from '../measure/methods.ts'
import { CONDITION_WORDS, KIND_NOUNS, MATERIAL_NOUNS, SHAPE_NOUNS } from './nouns.ts'
import { capital } from './sentence.ts'

/** The nouns of `nouns.ts` as they head a line. */
const headed = <K extends string>(nouns: { readonly [N in K]: string }): { readonly [N in K]: string } =>
  Object.fromEntries(Object.entries<string>(nouns).map(([key, noun]) => [key, capital(noun)])) as {
    readonly [N in K]: string
  }

/** What the choices of a field are called, in English. */

export const SHAPE_WORDS = headed(SHAPE_NOUNS)

export const MATERIAL_WORDS = { ...headed(MATERIAL_NOUNS), other: 'Other' }

export const CONDITION_NAMES = headed(CONDITION_WORDS)

export const DEFECT_WORDS: { readonly [D in LineDefect]: string } = {
  crack: 'Crack',
  break: 'Broken pipe',
  collapse: 'Collapsed pipe',
  deformation: 'Pressed out of round',
  'offset-joint': 'Offset joint',
  'open-joint': 'Open joint',
  'root-intrusion': 'Roots',
  sag: 'Sag that holds water',
  corrosion: 'Corrosion',
  blockage: 'Blockage',
  leak: 'Leak',
}

export const START_WORDS: { readonly [S in LineStart]: string } = {
  'house-wall': 'House wall',
  cleanout: 'Cleanout',
  tank: 'Tank',
  'pump-chamber': 'Pump chamber',
  'distribution-box': 'Distribution box',
  'far-end': 'Its far end',
}

export const OUTCOME_WORDS: { readonly [O in SearchOutcome]: string } = {
  found: 'Found',
  'not-found': 'Searched for, not found',
  'not-reached': 'Not reached',
  'not-looked-for': 'Not looked for',
}

export const SEARCH_WORDS: { readonly [M in SearchMethod]: string } = {
  excavation: 'Dug it open',
  probe: 'Probed for it',
  camera: 'Camera in the line',
  sonde: 'Sonde and receiver',
  'metal-detector': 'Metal detector',
  'ground-radar': 'Ground-penetrating radar',
  'seen-through-opening': 'Looked in through an opening',
}

export const NOT_REACHED_WORDS: { readonly [R in NotReachedReason]: string } = {
  buried: 'Buried',
  'paved-over': 'Paved or built over',
  refused: 'Refused by the owner or occupant',
  'no-time': 'No time',
  unsafe: 'Not safe to reach',
  other: 'Another reason (write it below)',
}

export const LEFT_OUT_WORDS: { readonly [R in LeftOutReason]: string } = {
  ...NOT_REACHED_WORDS,
  'shut-off': 'Water or power was shut off',
  'nobody-to-ask': 'Nobody to ask',
  'not-stated': 'The report does not say',
}

export const OPENED_WORDS: { readonly [O in OpeningMade]: string } = {
  'cover-off': 'Cover off, seen inside',
  'port-only': 'Only through an inspection port',
  'not-opened': 'Not opened',
}

export const TEST_WORDS: { readonly [T in TestResult]: string } = {
  works: 'Works',
  'does-not-work': 'Does not work',
  'not-tested': 'Not tested',
}

export const CONTRACT_WORDS: { readonly [C in Contract]: string } = {
  'in-force': 'In force',
  lapsed: 'Lapsed',
  none: 'None',
}

export const GROUND_WORDS: { readonly [G in Ground]: string } = {
  dry: 'Dry',
  lush: 'Unusually green or lush',
  wet: 'Wet or spongy',
  surfacing: 'Sewage or effluent on the surface',
}

export const RAIN_WORDS: { readonly [R in Rain]: string } = {
  dry: 'Dry',
  'some-rain': 'Some rain',
  'heavy-rain': 'Heavy rain',
  thaw: 'Thaw',
}

export const DISCHARGE_WORDS: { readonly [D in Discharge]: string } = {
  none: 'No',
  ground: 'Onto the ground',
  'ditch-or-drain': 'Into a ditch or storm drain',
  water: 'Into a stream, pond or lake',
}

export const DYE_WORDS: { readonly [D in Dye]: string } = {
  'no-dye': 'No dye was used',
  'not-seen': 'Dye was used and not seen',
  seen: 'Dye was seen',
}

export const OCCUPANCY_WORDS: { readonly [O in (typeof OCCUPANCY)[number]]: string } = {
  occupied: 'Occupied',
  vacant: 'Vacant',
  unknown: 'Not known',
}

export const SIDE_WORDS: { readonly [S in Side]: string } = {
  away: 'Away from the house',
  toward: 'Toward the house',
}

export const RUNS_WORDS: { readonly [R in (typeof RUNS)[number]]: string } = {
  'along-wall': 'Along the wall',
  'square-to-wall': 'Square to the wall',
}

export const WALL_WORDS: { readonly [W in (typeof WALLS)[number]]: string } = {
  front: 'Front',
  rear: 'Rear',
  left: 'Left',
  right: 'Right',
}

export const PERMIT_KIND_WORDS: { readonly [K in PermitKind]: string } = {
  new: 'New installation',
  repair: 'Repair',
  alteration: 'Alteration',
  abandonment: 'Abandonment',
}

export const ACTION_WORDS: { readonly [A in PermitAction]: string } = {
  install: 'Install',
  add: 'Add beside the old one',
  replace: 'Replace',
  alter: 'Alter',
  abandon: 'Abandon',
  mention: 'Mention only',
}

export const KIND_WORDS: { readonly [K in ComponentKind]: string } = {
  ...headed(KIND_NOUNS),
  tank: 'Septic tank',
}

/** How a length was taken, in as few words as a list on a phone has room for. */
export const METHOD_WORDS: { readonly [M in Method]: string } = {
  'inside-tape': 'tape, inside',
  'outside-tape': 'tape, outside',
  'ground-tape': 'tape, ground',
  'rigid-rule': 'rule or caliper',
  'laser-meter': 'laser',
  'sounding-rod': 'rod',
  'liquid-level-rule': 'level rule',
  probe: 'probe',
  wheel: 'wheel',
  pacing: 'paced',
  'by-eye': 'by eye',
  'record-drawing': 'scaled from a drawing',
  'stated-on-paper': 'from a document',
}

const TABLES = new Map<readonly unknown[], { readonly [choice: string]: string }>([
  [VESSEL_SHAPES, SHAPE_WORDS],
  [MATERIALS, MATERIAL_WORDS],
  [CONDITIONS, CONDITION_NAMES],
  [LINE_STARTS, START_WORDS],
  [LINE_DEFECTS, DEFECT_WORDS],
  [SEARCH_OUTCOMES, OUTCOME_WORDS],
  [SEARCH_METHODS, SEARCH_WORDS],
  [NOT_REACHED_REASONS, NOT_REACHED_WORDS],
  [LEFT_OUT_REASONS, LEFT_OUT_WORDS],
  [OPENINGS_MADE, OPENED_WORDS],
  [TEST_RESULTS, TEST_WORDS],
  [CONTRACTS, CONTRACT_WORDS],
  [GROUND, GROUND_WORDS],
  [RAIN, RAIN_WORDS],
  [DISCHARGES, DISCHARGE_WORDS],
  [DYE, DYE_WORDS],
  [OCCUPANCY, OCCUPANCY_WORDS],
  [SIDES, SIDE_WORDS],
  [RUNS, RUNS_WORDS],
  [WALLS, WALL_WORDS],
  [PERMIT_KINDS, PERMIT_KIND_WORDS],
  [PERMIT_ACTIONS, ACTION_WORDS],
  [COMPONENT_KINDS, KIND_WORDS],
])

/** What one choice of a list of the catalog is called. */
export const choiceWords = (choices: readonly unknown[], choice: string): string =>
  TABLES.get(choices)?.[choice] ?? choice
