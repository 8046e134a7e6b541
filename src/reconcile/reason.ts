import type { NonEmpty } from '../base/non-empty.ts'
import type { PartialDate } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { Condition, LeftOutReason, Material, SearchMethod } from '../catalog/choices.ts'
import type { CountedSurface } from '../geometry/absorption/absorption-shape.ts'
import type { Part } from '../records/part.ts'
import type { FirmText, PaperText } from '../records/whose.ts'
import type { Verified } from '../rules/citation.ts'
import type { Step as ProtocolStep } from '../rules/values/protocol.ts'
import type { AgainstLeast, Occasion } from './asked-of-code.ts'
import type { Aside, Gap, RuleGap } from './gap.ts'
import type { Quantity } from './quantity.ts'
import type { ReasonOfBuilding } from './reason-of-building.ts'
import type { ReasonOfLine } from './reason-of-line.ts'
import type { ReasonOfUse } from './reason-of-use.ts'
import type { DistanceRecordReason, SetbackReason } from './setback-reason.ts'

/** Signs of a system that fails, in the order of how bad they are. */
export const SIGNS = [
  'backup',
  'pipe-to-open',
  'discharge',
  'surfacing',
  'dye',
  'run-back',
  'wet-ground',
  'lush-ground',
] as const
export type Sign = (typeof SIGNS)[number]

/** What differs about the kind of a thing: one of these facts, as recorded and as found. */
export type TypeFact = 'kind' | 'shape' | 'compartments' | 'count'

/** Where a measurement already decides: what was found, and the permit that it bears out. */
export type Contradicted = Extract<Gap, { readonly gap: 'contradictory' }> & {
  readonly borneOut?: { readonly found: Quantity; readonly permit: string }
}

export type Doubt =
  | Extract<Gap, { readonly gap: 'unreadable' }>
  | Contradicted
  /** Two permits each put the same thing in, and neither replaces the other; what else they contradict each other on. */
  | {
      readonly gap: 'put-in-twice'
      readonly part: Part
      readonly permits: readonly string[]
      readonly on?: readonly Contradicted[]
    }
  /** A repair installs a field and does not say what becomes of the old one. */
  | {
      readonly gap: 'beside-or-instead'
      readonly permit: string
      readonly part: Part
      readonly among: readonly Part[]
    }
  /** The missing part of a date decides. */
  | {
      readonly gap: 'approved-when' | 'order-unclear'
      readonly part: Part
      readonly permits: readonly string[]
    }
  /** A permit changes something that no earlier one put in, or does not say which of several it means. */
  | {
      readonly gap: 'no-target' | 'which-target'
      readonly verb: 'replace' | 'alter' | 'abandon'
      readonly permit: string
      readonly part: Part
      readonly among: readonly Part[]
    }

/** One condition of a solids rule, as asked of the readings. */
export type SolidsAnswer = {
  readonly of:
    | 'share'
    | 'sludge-top-to-outlet-bottom'
    | 'scum-bottom-to-outlet-bottom'
    | 'scum-top-to-outlet-top'
  readonly found: Quantity | null
  readonly limit: Quantity | null
  readonly comes: 'due' | 'not-due' | 'too-close-to-call' | 'cannot-tell'
}

/**
 * Why an outcome is what it is: what a check knows, with its quantities, parts, papers and rules, and no sentence.
 * `words/` says it, severity and next step are computed from it.
 */
export type Reason =
  // Nothing was decided.
  | { readonly is: 'unknown'; readonly gaps: NonEmpty<Gap> }
  | { readonly is: 'not-asked'; readonly asides: NonEmpty<Aside> }
  | { readonly is: 'no-rule'; readonly rules: NonEmpty<RuleGap> }
  // The file.
  | { readonly is: 'permits-on-file'; readonly count: number; readonly by: PlainDate }
  | { readonly is: 'never-approved'; readonly permits: readonly string[]; readonly by: PlainDate }
  | { readonly is: 'no-permit' }
  | { readonly is: 'unclear'; readonly doubt: Doubt }
  // Sizes.
  | {
      readonly is: 'capacity-record'
      readonly found: Quantity
      readonly recorded: Quantity
      readonly tolerance: Quantity
      /** Of permits that contradict each other, the one that the measurement bears out. */
      readonly permit?: string
      readonly comes: 'agrees' | 'agrees-by-uncertainty' | 'smaller' | 'larger' | 'too-rough'
    }
  | {
      readonly is: 'capacity-code'
      readonly occasion: Occasion
      readonly tanks: number
      readonly found: Quantity
      readonly least: Quantity
      /** Null for a building that is no dwelling: its flow decides. */
      readonly bedrooms: number | null
      readonly flow?: Quantity
      readonly source: Verified
      readonly comes: AgainstLeast
    }
  | {
      readonly is: 'absorption-code'
      readonly occasion: Occasion
      readonly provided: Quantity
      readonly least: Quantity
      readonly bedrooms: number | null
      readonly flow?: Quantity
      /** Null where the soil decides in its place. */
      readonly perc: Quantity | null
      readonly soil?: PaperText | null
      readonly source: Verified
      readonly comes: AgainstLeast
    }
  | {
      readonly is: 'absorption-record'
      readonly computed: Quantity
      readonly recorded: Quantity
      readonly tolerance: Quantity
      /** Whose dimensions. */
      readonly by: 'inspection' | 'record'
      readonly surface: CountedSurface
      readonly comes: 'agrees' | 'smaller' | 'larger' | 'too-rough'
    }
  | ReasonOfBuilding
  | { readonly is: 'bedrooms'; readonly designed: number; readonly counted: number }
  // Parts.
  | { readonly is: 'found' }
  | {
      readonly is: 'searched'
      readonly by: readonly SearchMethod[]
      /** As the firm wrote it. */
      readonly within: FirmText | null
    }
  | {
      readonly is: 'still-there'
      readonly standing: 'replaced' | 'abandoned'
      readonly permit: string | null
    }
  | {
      readonly is: 'not-on-record'
      /** One of its kind that the record has taken out of service. */
      readonly formerly: {
        readonly part: Part
        readonly standing: 'replaced' | 'abandoned'
        readonly permit: string | null
      } | null
    }
  | { readonly is: 'same-material'; readonly material: Material }
  | { readonly is: 'other-material'; readonly recorded: Material; readonly found: Material }
  | {
      readonly is: 'other-pipe'
      /** Null where the material is the same. */
      readonly material: { readonly recorded: Material; readonly found: Material } | null
      readonly size: { readonly recorded: Quantity; readonly found: Quantity } | null
    }
  | ReasonOfLine
  | {
      readonly is: 'replaced-under-permit'
      readonly former: Part
      readonly from: Material
      readonly to: Material
      readonly permit: string
      readonly approvedOn: PartialDate | null
    }
  | { readonly is: 'same-type'; readonly facts: readonly TypeFact[] }
  | {
      readonly is: 'other-type'
      readonly facts: NonEmpty<{
        readonly fact: TypeFact
        readonly recorded: string | number
        readonly found: string | number
      }>
    }
  // Places.
  | {
      readonly is: 'apart'
      readonly distance: Quantity
      readonly elsewhere: boolean
      /** The record names no side, so both places that its ties meet at were compared. */
      readonly mirrored: boolean
    }
  | SetbackReason
  | DistanceRecordReason
  // State.
  | {
      readonly is: 'level'
      /** Above the invert; below it where negative. */
      readonly height: Quantity
      readonly tolerance: Quantity
      /** What it is read against. */
      readonly against: 'outlet' | 'inlet'
      /** What stood around it: told beside, and no excuse. */
      readonly around?: readonly ('heavy-rain' | 'thaw' | 'ground-water')[]
      /** `room`: below an inlet, so there is room left. */
      readonly comes: 'at' | 'high' | 'low' | 'near' | 'room'
    }
  | {
      readonly is: 'solids'
      readonly rule: string
      readonly source: Verified
      readonly conditions: readonly SolidsAnswer[]
      readonly comes: 'due' | 'not-due' | 'too-close-to-call' | 'cannot-tell'
      /** So full that solids leave with the flow. */
      readonly passing: boolean
    }
  | ReasonOfUse
  | { readonly is: 'condition'; readonly seen: Condition; readonly words: FirmText | null }
  /** What shows outside that the system does not drain. */
  | { readonly is: 'sign'; readonly sign: Sign; readonly seen: boolean }
  | {
      readonly is: 'protocol'
      readonly step: ProtocolStep
      readonly needed: boolean
      readonly end: 'done' | 'left-out'
      readonly why: LeftOutReason | null
    }
  /** A level below the outlet, against what could have flowed in since. */
  | {
      readonly is: 'low-level'
      readonly height: Quantity
      readonly missing: Quantity
      /** What the people living there could have sent in since it was last pumped; null where nobody knows. */
      readonly inflow: Quantity | null
      readonly vacant: boolean
      readonly comes: 'leaks' | 'refilling' | 'read-again'
      /** Of the flow per person; null where it was not needed. */
      readonly source: Verified | null
    }
  | {
      readonly is: 'metal-age'
      readonly permitted: number
      readonly limit: Quantity
      readonly source: Verified
      readonly old: boolean
    }
  | {
      readonly is: 'work-since'
      readonly inspectedOn: PlainDate
      readonly permits: readonly { readonly number: string; readonly approvedOn: PartialDate }[]
    }
  | {
      readonly is: 'counts'
      readonly inspectedOn: PlainDate
      /** The last day on which it counts for a transfer; null where no rule says. */
      readonly until: PlainDate | null
      readonly over: boolean
      readonly source: Verified | null
    }

export type ReasonOf<Is extends Reason['is']> = Extract<Reason, { readonly is: Is }>

/** What a certainty rests on. */
export type Basis =
  | 'undecided'
  | 'beyond-uncertainty'
  | 'rule-not-verified'
  | 'within-tolerance'
  | 'within-by-uncertainty'
  | 'too-rough'
  | 'within-uncertainty'
  | 'beyond-tolerance'
  | 'seen'
  | 'counted'
  | 'by-dates'
  | 'opened'
  | 'surface-search'
  | 'the-papers'
  | 'the-file'
  | 'the-file-may-grow'
  | 'presumption'
  | 'replaced-not-changed'
  | 'permit-and-inspection'
  | 'one-of-two-places'
  | 'edge-of-tellable'
  | 'within-ties'
  | 'place-not-known'
  | 'as-stated'
  | 'within-uncertainty-of-both'
  | 'reading-missing'
  /** Measurement alone would put it that far off once in so many times. */
  | { readonly onceIn: number }
