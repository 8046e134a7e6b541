/** Half the width of the interval that an error lies in: fixed, a share of the length, or the tape's own tolerance. */
export type HalfWidth =
  | { readonly inches: number }
  | { readonly shareOfLength: number }
  | { readonly tapeTolerance: true }

export type MethodPreset = {
  readonly says: string
  /** Error of the instrument itself: the same in every length taken with it, so a cause that the lengths share. */
  readonly instrument: HalfWidth
  /** Error of one reading: new at each reading, so a cause of its own. */
  readonly reading: HalfWidth
  readonly basis: string
  /** `published`: at least the instrument's figure stands in a cited document. `common-practice`: neither does. */
  readonly status: 'published' | 'common-practice'
}

const TAPE = 'Instrument: NIST Handbook 44 (2007) 5.52, tolerance of metal tapes.'
const NONE: HalfWidth = { inches: 0 }

/**
 * How a length was taken in the field or from paper, and how far off it may be. A pack or a firm with figures of its
 * own passes another table to `measuredLength`; these are what is assumed when nobody says more.
 */
export const METHODS = {
  'inside-tape': {
    says: 'metal tape held against the inside faces',
    instrument: { tapeTolerance: true },
    reading: { inches: 1 / 2 },
    basis: `${TAPE} Reading: ±1/2 in for uneven faces and rounded corners (common practice).`,
    status: 'published',
  },
  'outside-tape': {
    says: 'metal tape along the outside, walls to be taken off',
    instrument: { tapeTolerance: true },
    reading: { inches: 1 },
    basis: `${TAPE} Reading: ±1 in, because outside edges are under soil and often chipped (common practice).`,
    status: 'published',
  },
  'ground-tape': {
    says: 'metal tape over the ground, as for a tie',
    instrument: { tapeTolerance: true },
    reading: { inches: 3 },
    basis: `${TAPE} Reading: ±3 in for slope, sag and the choice of the point aimed at (common practice).`,
    status: 'published',
  },
  'rigid-rule': {
    says: 'rigid rule or caliper, as for a wall or a pipe',
    instrument: { tapeTolerance: true },
    reading: { inches: 1 / 16 },
    basis: `${TAPE} Reading: to the nearest eighth (half of the graduation).`,
    status: 'published',
  },
  'laser-meter': {
    says: 'laser distance meter',
    instrument: { inches: 1 / 8 },
    reading: { inches: 1 / 4 },
    basis: 'Instrument ±1/8 in, reading ±1/4 in for the target and the angle (common practice).',
    status: 'common-practice',
  },
  'sounding-rod': {
    says: 'graduated rod or stick lowered to the floor or a layer',
    instrument: { inches: 1 / 8 },
    reading: { inches: 1 },
    basis: 'Rod ±1/8 in; reading ±1 in, because the rod leans and soft layers give (common practice).',
    status: 'common-practice',
  },
  'liquid-level-rule': {
    says: 'rule from the outlet invert to the liquid, or down to the floor after pumping',
    instrument: { inches: 1 / 16 },
    reading: { inches: 1 / 2 },
    basis: 'Rule ±1/16 in; reading ±1/2 in for ripple and the invert’s edge (common practice).',
    status: 'common-practice',
  },
  probe: {
    says: 'probe pushed through soil to find an edge or a top',
    instrument: NONE,
    reading: { inches: 4 },
    basis: 'Reading ±4 in: the probe slides off edges, stones pass for concrete (common practice).',
    status: 'common-practice',
  },
  wheel: {
    says: 'measuring wheel rolled over the ground',
    instrument: { shareOfLength: 0.01 },
    reading: { inches: 6 },
    basis: 'Wheel ±1 % on grass, the same in every length; start and stop ±6 in (common practice).',
    status: 'common-practice',
  },
  pacing: {
    says: 'paced off on foot',
    instrument: { shareOfLength: 0.05 },
    reading: { inches: 18 },
    basis: 'Pace ±5 %, the same in every length; start and stop ±18 in (common practice).',
    status: 'common-practice',
  },
  'by-eye': {
    says: 'estimated by eye',
    instrument: { shareOfLength: 0.1 },
    reading: { shareOfLength: 0.15 },
    basis: 'The eye ±10 % of the length, the same in every length; each look ±15 % (common practice).',
    status: 'common-practice',
  },
  'record-drawing': {
    says: 'scaled or stated on a record drawing',
    instrument: NONE,
    reading: { inches: 6 },
    basis: 'WAC 246-272A-0265(1): "Measurements and directions accurate to +/- 1/2 foot".',
    status: 'published',
  },
  'stated-on-paper': {
    says: 'stated on paper, taken as written',
    instrument: NONE,
    reading: NONE,
    basis: 'Half of the last place written and nothing more: what the paper says, not how it was measured.',
    status: 'common-practice',
  },
} as const satisfies Record<string, MethodPreset>

export type Method = keyof typeof METHODS

export const METHOD_NAMES = Object.keys(METHODS) as readonly Method[]

export const isMethod = (name: string): name is Method => Object.hasOwn(METHODS, name)
