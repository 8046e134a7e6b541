import type { Step } from '../measure/step.ts'
import type { Origin } from '../records/as-built.ts'
import type { Citation } from '../rules/citation.ts'
import type { DiscrepancyKind } from './kinds.ts'

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

/** One piece of evidence: as it was stated, as it was used, and where it came from. */
export type Exhibit = {
  readonly what: string
  readonly word: 'stated' | 'found' | 'required' | 'derived'
  readonly asStated: string
  readonly asUsed: string
  readonly from: ExhibitSource
}

export type ExhibitSource =
  | { readonly kind: 'permit'; readonly origin: Origin }
  | {
      readonly kind: 'inspection'
      readonly findings: string
      readonly component: string | null
      readonly how: string
    }
  | { readonly kind: 'computed' }
  /** A rule, with where it was printed and whether anybody has read it there. */
  | { readonly kind: 'rule'; readonly says: string }

/** What a check is about: a component of the as-built or of the findings, or the whole system. */
export type Subject = { readonly key: string; readonly label: string; readonly kind: string }

/** The one measurement that would settle the question best, computed from the uncertainty budget. */
export type Settle = {
  readonly what: string
  readonly why: string
  readonly expandedUncertaintyAfter: number
  readonly unit: string
  readonly settles: boolean
}

/** How sure: `firm` beyond the stated coverage, `likely` short of it or resting on a softer fact, `open` undecided. */
export type Certainty = { readonly word: 'firm' | 'likely' | 'open'; readonly because: string }

export type Outcome = {
  readonly check: string
  readonly question: string
  readonly subject: Subject
  /** Tells outcomes of one check on one subject apart: `when permitted`, `today`, the name of a rule. */
  readonly facet: string | null
  readonly verdict: Verdict
  readonly raises: DiscrepancyKind | null
  /** One plain sentence with the numbers in it. */
  readonly because: string
  readonly certainty: Certainty
  readonly exhibits: readonly Exhibit[]
  readonly steps: readonly Step[]
  readonly citations: readonly Citation[]
  readonly wouldSettle: Settle | null
}
