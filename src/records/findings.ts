import type { PlainDate } from '../base/plain-date.ts'
import type { ComponentKind, Measures, Reference } from './component.ts'
import type { FoundLength, StatedVolume } from './quantity.ts'
import type { FirmText } from './whose.ts'

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

/** A satellite fix: the receiver's stated radius and what share of fixes it says lie inside it. */
export type Fix = {
  readonly lat: number
  readonly lon: number
  readonly radiusFt: number
  readonly coverage: 0.5 | 0.68 | 0.95
}

export type FoundComponent = Measures<FoundLength, StatedVolume> & {
  /** The as-built's key of the component this is taken to be; null where it answers to nothing on record. */
  readonly key: string | null
  readonly label: FirmText
  readonly kind: ComponentKind
  readonly outcome: SearchOutcome
  readonly searchedBy: readonly SearchMethod[]
  /** How far around the expected place the search went. */
  readonly searchedWithin: FoundLength | null
  readonly notReachedBecause: NotReachedReason | null
  readonly condition: Condition | null
  readonly conditionWords: FirmText | null
  /** Liquid surface above (+) or below (−) the outlet invert, feet. */
  readonly levelAboveOutlet: FoundLength | null
  readonly scumThickness: FoundLength | null
  /** Bottom of the scum below the liquid's surface. */
  readonly scumBottomBelow: FoundLength | null
  readonly sludgeDepth: FoundLength | null
  /** Bottom of the outlet device below the outlet invert, and its top above it. */
  readonly outletDeviceBelow: FoundLength | null
  readonly outletDeviceAbove: FoundLength | null
  readonly lidSecured: boolean | null
  readonly riserToGrade: boolean | null
  readonly fix: Fix | null
  /** Depth read from a sonde's signal, grade to the line. */
  readonly sondeDepth: FoundLength | null
  /** Length of line seen by camera. */
  readonly cameraRun: FoundLength | null
  readonly note: FirmText | null
}

export const OCCUPANCY = ['occupied', 'vacant', 'unknown'] as const

/** One dated inspection by one firm. */
export type FindingsRecord = {
  readonly inspectedOn: PlainDate
  readonly occupancy: (typeof OCCUPANCY)[number]
  readonly people: number | null
  readonly bedroomsCounted: number | null
  readonly lastPumpedOn: PlainDate | null
  readonly reference: Reference<FoundLength> | null
  readonly components: readonly FoundComponent[]
  readonly notes: FirmText | null
}

/** Findings as submitted: never changed afterwards, only amended by another. */
export type SubmittedFindings = {
  readonly id: string
  readonly firm: string
  readonly submittedOn: PlainDate
  readonly record: FindingsRecord
}
