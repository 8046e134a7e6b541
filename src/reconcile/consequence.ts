import { type ComponentKind, isAbsorption, isLine } from '../catalog/kinds.ts'
import type { Verified } from '../rules/citation.ts'
import type { Act } from './acts.ts'
import { FAILING_DEFECTS } from './failing.ts'
import type { DiscrepancyKind, Severity } from './kinds.ts'
import type { Outcome, Remeasurement } from './outcome.ts'
import type { Reason } from './reason.ts'

/** What a discrepancy leads to: how much it matters and what must happen next. */
export type Consequence = {
  readonly severity: Severity
  readonly act: Act
  /** The reading to take, where the act is to measure again. */
  readonly remeasure: Remeasurement | null
}

/** Without its outlet baffle a tank sends solids to the absorption area, which does not recover from them. */
const HURTS_WHEN_MISSING: readonly string[] = ['outlet-baffle', 'inlet-baffle', 'access-opening']

/** Parts with a place of their own that sewage passes, and wells. */
const PLACED: readonly (ComponentKind | 'system')[] = [
  'tank',
  'pump-chamber',
  'treatment-unit',
  'holding-tank',
  'grease-interceptor',
  'media-filter',
  'disinfection-unit',
  'laundry-system',
  'cesspool',
  'privy',
  'straight-pipe',
  'well',
]

/** Parts whose place matters to more than whoever looks for them next. */
const PLACE_MATTERS = (kind: ComponentKind | 'system'): boolean =>
  kind !== 'system' && (PLACED.includes(kind) || isAbsorption(kind))

/** Parts that are work without a permit where no permit shows them. What keeps its distance from a well needs the well known. */
const PERMIT_MATTERS = (kind: ComponentKind | 'system'): boolean =>
  PLACE_MATTERS(kind) || (kind !== 'system' && isLine(kind))

const WITHOUT_A_TEXT: readonly Verified[] = ['common-practice', 'from-memory']

const consequence = (severity: Severity, act: Act): Consequence => ({ severity, act, remeasure: null })

/** Computed from the kind and the typed reason alone. The compiler holds that no kind is left out. */
export function consequenceOf(kind: DiscrepancyKind, outcome: Outcome): Consequence {
  const { reason, subject } = outcome
  switch (kind) {
    case 'capacity-below-record':
      return consequence('review', 'correct-permit-or-accept')
    case 'capacity-above-record':
      return consequence('review', 'find-replacement-or-correct')
    case 'absorption-differs':
      return consequence('review', 'find-replacement-or-correct')
    case 'capacity-below-code':
    case 'absorption-below-code':
      return isToday(reason)
        ? consequence('note', 'nothing-until-change')
        : consequence('review', 'decide-whether-it-may-stay')
    case 'measurement-unclear':
      // Falling short of today's code alone asks nothing of anybody, so neither does not being sure of it.
      return isToday(reason)
        ? consequence('note', 'nothing-until-change')
        : { severity: 'review', act: 'remeasure', remeasure: outcome.wouldSettle?.measurement ?? null }
    case 'bedrooms-above-design':
      return consequence('review', 'decide-on-bedrooms')
    case 'construction-below-code':
      return isToday(reason)
        ? consequence('note', 'nothing-until-change')
        : consequence('review', 'decide-whether-it-may-stay')
    case 'type-not-accepted':
      return notAccepted(reason)
    case 'load-above-design':
      return consequence('review', 'remove-load')
    case 'field-burdened':
      return consequence('review', 'clear-field')
    case 'component-missing':
      // A filter keeps solids from the field, and the baffle goes on doing so without it.
      if (reason.is === 'required-part')
        return isToday(reason)
          ? consequence('note', 'nothing-until-change')
          : consequence('review', 'install-or-accept-part')
      return HURTS_WHEN_MISSING.includes(subject.kind)
        ? consequence('action', 'replace-part')
        : consequence('review', 'correct-or-search-again')
    case 'component-not-on-record':
      return PERMIT_MATTERS(subject.kind)
        ? consequence('review', 'find-paper-or-require-permit')
        : consequence('note', 'nothing')
    case 'line-replaced':
      return consequence('note', 'nothing')
    case 'line-replaced-without-permit':
      return consequence('review', 'find-permit-or-require-one')
    case 'material-differs':
    case 'type-differs':
      return consequence('review', 'find-replacement-or-correct')
    case 'position-differs':
      return consequence(
        PLACE_MATTERS(subject.kind) ? 'review' : 'note',
        reason.is === 'distance-record' ? 'correct-distance' : 'correct-ties',
      )
    case 'setback-short':
      return isToday(reason)
        ? consequence('note', 'nothing-until-change')
        : isNearWell(reason)
          ? consequence('action', 'test-water')
          : consequence('review', 'decide-whether-it-may-stay')
    case 'lender-distance-short':
      return consequence('note', 'lender-decides')
    case 'level-high':
      // Room that no code of the place asks for is a reason to look, and not yet a failure.
      return reason.is === 'room-left' && WITHOUT_A_TEXT.includes(reason.source)
        ? consequence('review', 'check-drainfield')
        : consequence('action', 'fix-flow')
    case 'level-low':
      return reason.is === 'low-level' && reason.comes === 'read-again'
        ? consequence('review', 'refill-and-read')
        : consequence('action', 'test-for-leaks')
    case 'failure-sign':
      return sign(reason)
    case 'equipment-failed':
      return consequence(
        'action',
        reason.is === 'equipment' && reason.device === 'wiring' ? 'cover-wiring' : 'repair-equipment',
      )
    case 'contract-lapsed':
      return consequence('review', 'renew-contract')
    case 'inspection-incomplete':
      return consequence('review', 'finish-inspection')
    case 'solids-high':
      // Due under a rule whose own text was read: it obliges. Under practice or a rule at second hand: advice on record.
      return reason.is === 'solids' && reason.source === 'read'
        ? consequence('action', 'pump')
        : reason.is === 'solids' && reason.passing
          ? consequence('review', 'pump')
          : consequence('note', 'pump-advised')
    case 'condition-poor':
      return poor(reason)
    case 'record-absent':
      return consequence('review', 'search-old-numbers')
    case 'record-unclear':
      return consequence(
        'review',
        reason.is === 'never-approved'
          ? 'find-approval'
          : isDecided(reason)
            ? 'correct-to-measured'
            : 'settle-the-papers',
      )
    case 'system-not-on-record':
      return consequence('review', 'say-what-it-serves')
    case 'findings-stale':
      return consequence('review', 'inspect-again')
  }
}

/** A measurement decides between permits that contradict each other. */
export const isDecided = (reason: Reason): boolean => {
  if (reason.is !== 'unclear') return false
  const { doubt } = reason
  if (doubt.gap === 'contradictory') return doubt.borneOut !== undefined
  const on = doubt.gap === 'put-in-twice' ? (doubt.on ?? []) : []
  return on.length > 0 && on.every(({ borneOut }) => borneOut !== undefined)
}

/** Too near to the house's own well: it is drunk from. */
export const isNearWell = (reason: Reason): boolean => reason.is === 'setback' && reason.to === 'well'

const isToday = (reason: Reason): boolean => 'occasion' in reason && reason.occasion === 'today'

/** What was lawful when it was built stays, unless today's law says what becomes of those that are there. */
function notAccepted(reason: Reason): Consequence {
  if (reason.is !== 'accepted') return consequence('review', 'decide-whether-it-may-stay')
  switch (reason.existing) {
    case 'hazard':
      return consequence('action', 'replace-system')
    case 'replace-at-transfer':
      return consequence('action', 'replace-at-transfer')
    case 'until-it-fails':
    case null:
      return isToday(reason)
        ? consequence('note', 'nothing-until-change')
        : consequence('review', 'decide-whether-it-may-stay')
  }
}

function sign(reason: Reason): Consequence {
  if (reason.is !== 'sign') return consequence('review', 'check-drainfield')
  switch (reason.sign) {
    case 'backup':
      return consequence('action', 'stop-use-and-fix')
    case 'pipe-to-open':
      return consequence('action', 'replace-straight-pipe')
    case 'discharge':
    case 'dye':
      return consequence('action', 'stop-discharge')
    case 'surfacing':
    case 'run-back':
      return consequence('action', 'fix-flow')
    case 'wet-ground':
      return consequence('review', 'check-drainfield')
    case 'lush-ground':
      return consequence('note', 'nothing')
  }
}

function poor(reason: Reason): Consequence {
  switch (reason.is) {
    case 'cover':
      return consequence(
        'action',
        reason.outOfUse ? 'close-and-fill' : reason.missing ? 'cover-at-once' : 'secure-cover',
      )
    case 'top':
      return consequence('action', 'keep-off')
    case 'metal-age':
      return consequence('review', 'decide-on-metal-tank')
    case 'defect':
      return FAILING_DEFECTS.includes(reason.seen)
        ? consequence('action', 'repair-or-replace')
        : consequence('review', 'decide-on-repair')
    case 'condition':
      switch (reason.seen) {
        case 'leaking':
        case 'broken':
        case 'collapsed':
        case 'blocked':
          return consequence('action', 'repair-or-replace')
        case 'cracked':
        case 'corroded':
        case 'worn':
        case 'sound':
          return consequence('review', 'decide-on-repair')
      }
  }
  return consequence('review', 'decide-on-repair')
}
