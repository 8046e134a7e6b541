import type { SearchMethod } from '../catalog/choices.ts'
import type { Method } from '../measure/methods.ts'
import type { Step } from '../measure/step.ts'
import type { Origin } from '../records/as-built.ts'
import type { Part } from '../records/part.ts'
import type { FirmText, PaperText } from '../records/whose.ts'
import type { Citation } from '../rules/citation.ts'
import type { ParameterName } from '../rules/parameters.ts'
import type { DiscrepancyKind } from './kinds.ts'
import type { Quantity } from './quantity.ts'
import type { Basis, Reason } from './reason.ts'
import type { Shown, Thing } from './thing.ts'

/** How a check can end. The first four decide; the last three say why nothing was decided. */
export const VERDICTS = [
  'agrees',
  'differs',
  'suffices',
  'falls-short',
  'too-close-to-call',
  'cannot-tell',
  'does-not-apply',
] as const
export type Verdict = (typeof VERDICTS)[number]

/** One piece of evidence: what it is and of which part, as it was stated, as it was used, and where it came from. */
export type Exhibit = {
  readonly thing: Thing
  readonly part: Part | null
  readonly word: 'stated' | 'found' | 'required' | 'derived'
  /** As the paper or the firm wrote it; null where it is ours or was not written. */
  readonly asStated: PaperText | FirmText | null
  readonly used: Shown
  readonly from: ExhibitSource
}

export type ExhibitSource =
  | { readonly kind: 'permit'; readonly origin: Origin }
  | {
      readonly kind: 'inspection'
      readonly findings: string
      /** The firm's label of the component; null for the house. */
      readonly component: FirmText | null
      readonly how: Method | SearchMethod | 'seen' | 'counted' | 'by-camera' | 'by-satellite'
    }
  | { readonly kind: 'computed' }
  /** A rule, with where it was printed and whether anybody has read it there. */
  | { readonly kind: 'rule'; readonly citations: readonly Citation[] }

/** The one measurement that would settle the question best, computed from the uncertainty budget. */
export type Settle = {
  readonly measurement: Remeasurement
  /** Share of the variance that it would take away, 0 to 1. */
  readonly varianceRemoved: number
  readonly now: Quantity
  /** Expanded uncertainty (k = 2) if only this were measured again. */
  readonly after: Quantity
  readonly settles: boolean
}

/** A reading to take again, or for the first time, by a better method. */
export type Remeasurement = {
  readonly thing: Thing
  readonly part: Part
  readonly method: Method
  /** Nobody has measured it yet: a usual value stood in. */
  readonly first: boolean
}

/** How sure: `firm` beyond the stated coverage, `likely` short of it or resting on a softer fact, `open` undecided. */
export type Certainty = { readonly word: 'firm' | 'likely' | 'open'; readonly basis: Basis }

/** A citation with the rule of the pack that it stands for; null where the check looked its rule up itself. */
export type RuleCited = Citation & { readonly rule: ParameterName | null }

export type Outcome = {
  readonly check: string
  readonly subject: Part
  /** Tells outcomes of one check on one subject apart: `when permitted`, `today`, the id of a rule. */
  readonly facet: string | null
  readonly verdict: Verdict
  readonly raises: DiscrepancyKind | null
  readonly reason: Reason
  readonly certainty: Certainty
  readonly exhibits: readonly Exhibit[]
  readonly steps: readonly Step[]
  readonly citations: readonly RuleCited[]
  readonly wouldSettle: Settle | null
}
