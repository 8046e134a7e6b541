import type { DiscrepancyKind, Severity } from '../reconcile/kinds.ts'
import type { Verdict } from '../reconcile/outcome.ts'
import type { DiscrepancyState } from '../reconcile/projection.ts'
import type { Reason } from '../reconcile/reason.ts'
import type { Part } from '../records/part.ts'
import { KIND_NOUNS } from './nouns.ts'
import { capital } from './sentence.ts'

/** What a kind of discrepancy is called in a list, a filter, a chart. */
export const KIND_TITLES: { readonly [K in DiscrepancyKind]: string } = {
  'capacity-below-record': 'Capacity below the record',
  'capacity-above-record': 'Capacity above the record',
  'capacity-below-code': 'Capacity below code',
  'construction-below-code': 'Construction below code',
  'type-not-accepted': 'Type not accepted',
  'component-missing': 'Part missing',
  'component-not-on-record': 'Part not on record',
  'line-replaced': 'Line replaced',
  'line-replaced-without-permit': 'Line replaced without a permit',
  'material-differs': 'Material differs',
  'type-differs': 'Type differs',
  'position-differs': 'Location differs',
  'setback-short': 'Setback not met',
  'lender-distance-short': 'Lender’s distance not met',
  'bedrooms-above-design': 'More bedrooms than designed for',
  'load-above-design': 'More load than designed for',
  'field-burdened': 'Load over the drainfield',
  'absorption-below-code': 'Absorption area below code',
  'absorption-differs': 'Absorption area differs',
  'level-high': 'Liquid level high',
  'level-low': 'Liquid level low',
  'solids-high': 'Pumping due',
  'condition-poor': 'Poor condition',
  'failure-sign': 'Sign of failure',
  'equipment-failed': 'Equipment does not work',
  'contract-lapsed': 'No service contract',
  'inspection-incomplete': 'Inspection incomplete',
  'record-absent': 'No permit on file',
  'record-unclear': 'Record unclear',
  'system-not-on-record': 'Another system or lot found',
  'measurement-unclear': 'Measurement unclear',
  'findings-stale': 'Inspection too old',
}

/** The same of one part, as it reads in English, and of what was seen of it: `Outlet baffle missing`, `Tank left open`. */
export function titleOf(kind: DiscrepancyKind, { kind: part }: Pick<Part, 'kind'>, reason?: Reason): string {
  const noun = capital(KIND_NOUNS[part])
  switch (kind) {
    case 'condition-poor':
      return reason === undefined ? KIND_TITLES[kind] : conditionTitle(noun, reason)
    case 'level-high':
      return reason?.is === 'room-left' ? 'Little room left' : KIND_TITLES[kind]
    case 'solids-high':
      return reason?.is === 'privy-room' ? 'Privy almost full' : KIND_TITLES[kind]
    case 'line-replaced-without-permit':
      return reason?.is === 'stretches' ? 'Part of a line replaced without a permit' : KIND_TITLES[kind]
    case 'component-missing':
      return `${noun} missing`
    case 'component-not-on-record':
      return `${noun} not on record`
    default:
      return KIND_TITLES[kind]
  }
}

function conditionTitle(noun: string, reason: Reason): string {
  switch (reason.is) {
    case 'cover':
      if (reason.missing)
        return reason.outOfUse ? `Abandoned ${noun.toLowerCase()} left open` : `${noun} open`
      return reason.outOfUse ? `Abandoned ${noun.toLowerCase()} not secured` : 'Cover not secured'
    case 'top':
      return `Top of ${noun.toLowerCase()} gives way`
    case 'metal-age':
      return 'Metal tank past its age limit'
    case 'defect':
      return `${noun} damaged`
    default:
      return KIND_TITLES['condition-poor']
  }
}

/** A shape and a word: filled for what must be done, open for what must be reviewed, a dot for what is only noted. */
export const SEVERITY_WORDS: {
  readonly [S in Severity]: { readonly sign: string; readonly word: string; readonly means: string }
} = {
  action: {
    sign: '▲',
    word: 'Action',
    means: 'before the property changes hands or the system stays in use',
  },
  review: { sign: '△', word: 'Review', means: 'someone must review it' },
  note: { sign: '·', word: 'Note', means: 'nothing is needed' },
}

/** The sign that stands between record and found, and its word; the sign never stands alone. */
export const VERDICT_WORDS: { readonly [V in Verdict]: { readonly sign: string; readonly word: string } } = {
  agrees: { sign: '=', word: 'agrees' },
  differs: { sign: '≠', word: 'differs' },
  suffices: { sign: '≥', word: 'meets it' },
  'falls-short': { sign: '<', word: 'falls short' },
  'too-close-to-call': { sign: '≈', word: 'too close to call' },
  'cannot-tell': { sign: '?', word: 'cannot tell' },
  'does-not-apply': { sign: '–', word: 'does not apply' },
}

export const DISCREPANCY_STATE_WORDS: { readonly [S in DiscrepancyState]: string } = {
  open: 'Open',
  decided: 'Decided',
  'ground-moved': 'Evidence changed since it was decided',
  vanished: 'Gone',
}
