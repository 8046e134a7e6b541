/** The closed lists that a field's value is chosen from. */

export const MATERIALS = [
  'concrete',
  'concrete-block',
  'brick',
  'stone',
  'steel',
  'fiberglass',
  'polyethylene',
  'wood',
  'cast-iron',
  'ductile-iron',
  'vitrified-clay',
  'bituminized-fiber',
  'asbestos-cement',
  'pvc',
  'abs',
  'gravel',
  'other',
] as const
export type Material = (typeof MATERIALS)[number]

/** Where the distances along a line are measured from. `far-end`: where the line ends, at the tank, the box or the field. */
export const LINE_STARTS = [
  'house-wall',
  'cleanout',
  'tank',
  'pump-chamber',
  'distribution-box',
  'far-end',
] as const
export type LineStart = (typeof LINE_STARTS)[number]

/** What a camera sees wrong in a line. */
export const LINE_DEFECTS = [
  'crack',
  'break',
  'collapse',
  'deformation',
  'offset-joint',
  'open-joint',
  'root-intrusion',
  'sag',
  'corrosion',
  'blockage',
  'leak',
] as const
export type LineDefect = (typeof LINE_DEFECTS)[number]

export const VESSEL_SHAPES = [
  'rectangular',
  'vertical-cylinder',
  'horizontal-cylinder',
  'horizontal-oval',
  'vertical-oval',
  'sphere',
] as const
export type VesselShape = (typeof VESSEL_SHAPES)[number]

/** Which side of the reference wall's line: the open ground the wall faces, or the house's side. */
export const SIDES = ['away', 'toward'] as const
export type Side = (typeof SIDES)[number]

/** How the long side of a part lies to the reference wall: all that most sketches tell. */
export const RUNS = ['along-wall', 'square-to-wall'] as const

export const WALLS = ['front', 'rear', 'left', 'right'] as const

export const PERMIT_KINDS = ['new', 'repair', 'alteration', 'abandonment'] as const
export type PermitKind = (typeof PERMIT_KINDS)[number]

/** What a permit does to a component: put in, put in beside what is there, put in for an older one, change in part, take out of use, mention. */
export const PERMIT_ACTIONS = ['install', 'add', 'replace', 'alter', 'abandon', 'mention'] as const
export type PermitAction = (typeof PERMIT_ACTIONS)[number]

/** `not-found` is said only of a search with a stated method; the other two are no evidence either way. */
export const SEARCH_OUTCOMES = ['found', 'not-found', 'not-reached', 'not-looked-for'] as const
export type SearchOutcome = (typeof SEARCH_OUTCOMES)[number]

export const SEARCH_METHODS = [
  'excavation',
  'probe',
  'camera',
  'sonde',
  'metal-detector',
  'ground-radar',
  'seen-through-opening',
] as const
export type SearchMethod = (typeof SEARCH_METHODS)[number]

export const NOT_REACHED_REASONS = ['buried', 'paved-over', 'refused', 'no-time', 'unsafe', 'other'] as const
export type NotReachedReason = (typeof NOT_REACHED_REASONS)[number]

/** Why something that the protocol requires was left out of what was inspected. An imported report may not say. */
export const LEFT_OUT_REASONS = [...NOT_REACHED_REASONS, 'shut-off', 'nobody-to-ask', 'not-stated'] as const
export type LeftOutReason = (typeof LEFT_OUT_REASONS)[number]

export const CONDITIONS = [
  'sound',
  'worn',
  'cracked',
  'corroded',
  'leaking',
  'broken',
  'collapsed',
  'blocked',
] as const
export type Condition = (typeof CONDITIONS)[number]

/** How far a part was opened. A port shows a liquid level and hides baffles, walls and roots. */
export const OPENINGS_MADE = ['cover-off', 'port-only', 'not-opened'] as const
export type OpeningMade = (typeof OPENINGS_MADE)[number]

export const TEST_RESULTS = ['works', 'does-not-work', 'not-tested'] as const
export type TestResult = (typeof TEST_RESULTS)[number]

/** How an owner stands with whoever keeps a treatment unit going. */
export const CONTRACTS = ['in-force', 'lapsed', 'none'] as const
export type Contract = (typeof CONTRACTS)[number]

/** What the ground over the drainfield and around the tank looked like, from best to worst. */
export const GROUND = ['dry', 'lush', 'wet', 'surfacing'] as const
export type Ground = (typeof GROUND)[number]

/** Where sewage or effluent goes that no drainfield takes. */
export const DISCHARGES = ['none', 'ground', 'ditch-or-drain', 'water'] as const
export type Discharge = (typeof DISCHARGES)[number]

export const DYE = ['no-dye', 'not-seen', 'seen'] as const
export type Dye = (typeof DYE)[number]

export const OCCUPANCY = ['occupied', 'vacant', 'unknown'] as const

/** Rain of the last days before the inspection. */
export const RAIN = ['dry', 'some-rain', 'heavy-rain', 'thaw'] as const
export type Rain = (typeof RAIN)[number]

/** What share of fixes a receiver says lie inside its radius. */
export const COVERAGES = [0.5, 0.68, 0.95] as const

/** What a system serves, as anybody may know it. `main`: a parcel's own, of which nothing else was said. */
export const SYSTEM_USES = [
  'main',
  'main-house',
  'second-house',
  'cottage',
  'dwelling-unit',
  'laundry',
  'workshop',
  'business',
  'other-building',
] as const
export type SystemUse = (typeof SYSTEM_USES)[number]
