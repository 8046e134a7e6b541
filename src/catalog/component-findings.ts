import {
  CONDITIONS,
  CONTRACTS,
  LEFT_OUT_REASONS,
  NOT_REACHED_REASONS,
  OPENINGS_MADE,
  SEARCH_METHODS,
  SEARCH_OUTCOMES,
  TEST_RESULTS,
} from './choices.ts'
import type { Fields } from './field.ts'
import {
  COMPONENT_KINDS,
  FIELDS_OF_SOIL,
  LINES,
  OPENED,
  OPENINGS,
  PITS,
  POWERED,
  VESSELS,
  WITH_OUTLET,
} from './kinds.ts'
import { FIX } from './places.ts'
import { DEFECTS } from './stretches.ts'
import { CAMERA, DEPTH, GROUND, INSIDE, INVERT } from './ways.ts'

const INSIDE_A_TANK = [{ kinds: VESSELS }] as const
const TANK = [{ kinds: ['tank'] }] as const
const LAYER = {
  value: 'length',
  unit: 'ft',
  ways: DEPTH,
  possible: [0, 100],
  plausible: [0, 8],
  by: 'inspection',
  section: 'contents',
  on: INSIDE_A_TANK,
} as const
const TESTED = { value: 'choice', choices: TEST_RESULTS, by: 'inspection', section: 'state' } as const
const DEVICE = { ...LAYER, ways: INVERT, plausible: [0, 6] } as const

/** What only an inspection can say of a component: how it was looked for, what stands in it, what state it is in. */
export const FOUND = {
  outcome: {
    value: 'choice',
    choices: SEARCH_OUTCOMES,
    by: 'inspection',
    needed: true,
    aliases: ['outcome', 'found'],
  },
  searchedBy: { value: 'choices', choices: SEARCH_METHODS, default: [], by: 'inspection' },
  /** How far around the expected place the search went. */
  searchedWithin: {
    value: 'length',
    unit: 'ft',
    ways: GROUND,
    possible: [0, 5280],
    plausible: [0.5, 200],
    by: 'inspection',
    example: '6 ft',
  },
  notReachedBecause: { value: 'choice', choices: NOT_REACHED_REASONS, by: 'inspection' },
  /** Length of line seen by camera. */
  cameraRun: {
    value: 'length',
    unit: 'ft',
    ways: CAMERA,
    possible: [0, 10_000],
    plausible: [1, 500],
    by: 'inspection',
    section: 'size',
    example: '42 ft',
    on: [{ kinds: LINES }],
  },
  /** Depth read from a sonde's signal, grade to the line. */
  sondeDepth: {
    value: 'length',
    unit: 'ft',
    ways: GROUND,
    possible: [0, 100],
    plausible: [0.25, 20],
    by: 'inspection',
    section: 'size',
    example: '2.5 ft',
    on: [{ kinds: LINES }],
  },
  opened: {
    value: 'choice',
    choices: OPENINGS_MADE,
    by: 'inspection',
    section: 'what',
    aliases: ['opened'],
    on: [{ kinds: OPENED }],
  },
  notOpenedBecause: {
    value: 'choice',
    choices: NOT_REACHED_REASONS,
    by: 'inspection',
    section: 'what',
    on: [{ kinds: OPENED }],
  },
  /** Why a level, a test or a look that the protocol requires was left out. */
  leftOutBecause: {
    value: 'choice',
    choices: LEFT_OUT_REASONS,
    by: 'inspection',
    section: 'contents',
    aliases: ['left out because', 'reason not done'],
    on: [{ kinds: OPENED }],
  },
  /** Liquid surface above (+) or below (−) the inlet invert, or the pipe in the gravel, feet. */
  levelAboveInlet: {
    value: 'level',
    unit: 'ft',
    ways: INVERT,
    possible: [-100, 100],
    plausible: [-12, 4],
    by: 'inspection',
    section: 'contents',
    on: [{ kinds: [...PITS, ...FIELDS_OF_SOIL, 'media-filter', 'observation-port'] }],
  },
  pumpWorks: {
    value: 'choice',
    choices: TEST_RESULTS,
    by: 'inspection',
    section: 'state',
    on: [{ kinds: ['pump-chamber', 'treatment-unit'] }],
  },
  floatsWork: { ...TESTED, on: [{ kinds: ['pump-chamber', 'holding-tank'] }] },
  timerWorks: { ...TESTED, on: [{ kinds: ['pump-chamber', 'treatment-unit'] }] },
  /** No wire, splice or terminal lies bare, and the panel and its cover are closed. */
  wiringCovered: { value: 'flag', by: 'inspection', section: 'state', on: [{ kinds: POWERED }] },
  /** The chlorinator has tablets and feeds them, or the lamp burns. */
  disinfects: { ...TESTED, on: [{ kinds: ['disinfection-unit'] }] },
  /** The contract for its upkeep, as the owner or the provider shows it. */
  serviceContract: {
    value: 'choice',
    choices: CONTRACTS,
    by: 'inspection',
    section: 'state',
    aliases: ['contract', 'maintenance contract'],
    on: [{ kinds: ['treatment-unit'] }],
  },
  alarmWorks: {
    value: 'choice',
    choices: TEST_RESULTS,
    by: 'inspection',
    section: 'state',
    on: [{ kinds: POWERED }],
  },
  /** Liquid surface above (+) or below (−) the outlet invert, feet. */
  levelAboveOutlet: {
    value: 'level',
    unit: 'ft',
    ways: INVERT,
    possible: [-100, 100],
    plausible: [-8, 4],
    by: 'inspection',
    section: 'contents',
    on: [{ kinds: [...WITH_OUTLET, 'distribution-box'] }],
  },
  /** The same after water was run in to test it, against the same reference. */
  levelAfterTest: {
    value: 'level',
    unit: 'ft',
    ways: INVERT,
    possible: [-100, 100],
    plausible: [-12, 4],
    by: 'inspection',
    section: 'contents',
    on: [
      {
        kinds: [...WITH_OUTLET, ...PITS, ...FIELDS_OF_SOIL, 'distribution-box', 'observation-port'],
      },
    ],
  },
  scumThickness: { ...LAYER, example: '3 in', aliases: ['scum'] },
  /** Bottom of the scum below the liquid's surface. */
  scumBottomBelow: { ...LAYER, example: '2 in' },
  /** Contents of a privy below the ground or the slab over it. */
  roomBelowTop: {
    ...LAYER,
    plausible: [0, 12],
    on: [{ kinds: ['privy'] }],
    example: '3 ft',
  },
  sludgeDepth: { ...LAYER, example: '10 in', aliases: ['sludge'] },
  /** Bottom of the outlet device below the outlet invert, and its top above it. */
  outletDeviceBelow: { ...DEVICE, example: '16 in' },
  outletDeviceAbove: { ...DEVICE, example: '6 in' },
  /** Bottom of the inlet device below the outlet invert, which is where the liquid stands. */
  inletDeviceBelow: { ...DEVICE, on: TANK, example: '8 in' },
  /** Inlet invert above (+) or below (−) the outlet invert, feet. Below it, sewage stands in the house's line. */
  inletAboveOutlet: {
    value: 'level',
    unit: 'ft',
    ways: INVERT,
    possible: [-10, 10],
    plausible: [-0.25, 0.5],
    by: 'inspection',
    section: 'contents',
    on: TANK,
  },
  /** Inside length of the first compartment, where there are two. */
  firstCompartmentLength: {
    ...LAYER,
    ways: INSIDE,
    plausible: [1.5, 20],
    section: 'size',
    on: TANK,
    example: '5 ft',
  },
  condition: {
    value: 'choice',
    choices: CONDITIONS,
    by: 'inspection',
    section: 'state',
    aliases: ['condition'],
    on: [{ kinds: COMPONENT_KINDS }],
  },
  conditionWords: {
    value: 'prose',
    most: 1000,
    by: 'inspection',
    section: 'state',
    on: [{ kinds: COMPONENT_KINDS }],
  },
  defects: DEFECTS,
  lidSecured: {
    value: 'flag',
    by: 'inspection',
    section: 'state',
    on: [
      {
        kinds: [
          ...VESSELS,
          ...PITS,
          ...OPENINGS,
          'media-filter',
          'privy',
          'distribution-box',
          'observation-port',
        ],
      },
    ],
  },
  /** Open, or with a cover that is broken or not there. */
  coverMissing: {
    value: 'flag',
    by: 'inspection',
    section: 'state',
    on: [{ kinds: [...VESSELS, ...PITS, ...OPENINGS, 'media-filter', 'privy', 'distribution-box'] }],
  },
  /** A probe pushed from the side goes through the top. */
  topGivesWay: {
    value: 'flag',
    by: 'inspection',
    section: 'state',
    on: [{ kinds: [...VESSELS, ...PITS, 'privy'] }],
  },
  riserToGrade: {
    value: 'flag',
    by: 'inspection',
    section: 'state',
    on: [{ kinds: [...VESSELS, ...OPENINGS] }],
  },
  fix: FIX,
} as const satisfies Fields
