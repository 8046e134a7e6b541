import { AWAITS, type DecisionAction } from '../records/decision.ts'
import type { DiscrepancyKind, Severity } from './kinds.ts'
import type { Meaning } from './meaning/meaning.ts'

export const STATUS_WORDS = [
  'no-record',
  'not-inspected',
  'agrees',
  'under-review',
  'action-needed',
  'settled',
  'out-of-date',
] as const
export type StatusWord = (typeof STATUS_WORDS)[number]

/** A discrepancy as the status sees it: what it asks, and what a reviewer has done about it. */
export type Standing = {
  readonly kind: DiscrepancyKind
  readonly severity: Severity
  /** Its sentence for agents. */
  readonly says: string
  /** Who has to act while nothing is decided. */
  readonly next: Meaning['next']
  /** The decision in force; null while there is none, or when its ground has moved since. */
  readonly decided: DecisionAction | null
}

export type StatusInput = {
  readonly hasApprovedPermit: boolean
  readonly hasInspection: boolean
  readonly discrepancies: readonly Standing[]
  /** A decision was made about something that no longer differs: a record that was corrected, a part put back. */
  readonly decidedBefore: boolean
}

export type ParcelStatus = {
  readonly word: StatusWord
  readonly sentence: string
  /** What is still open, in the words for agents, worst first and none of them twice. */
  readonly outstanding: readonly Outstanding[]
}

/** One thing that is still open: what it is, and who has to do what about it. */
export type Outstanding = {
  readonly says: string
  readonly who: Meaning['next']['who']
  readonly what: string
}

/**
 * The parcel's one word. What endangers someone or asks something of the owner comes first, whatever else is true; a
 * file that is empty or an inspection that no longer counts comes before the questions they leave open; notes never count.
 */
export function statusOf(input: StatusInput): ParcelStatus {
  const open = input.discrepancies.filter(isOpen)
  const word = wordFor(input, open)
  const outstanding = new Map<string, Outstanding>()
  for (const standing of [...open].sort((a, b) => rank(a) - rank(b))) {
    if (!outstanding.has(standing.says)) outstanding.set(standing.says, outstandingOf(standing))
  }
  return { word, sentence: SENTENCES[word], outstanding: [...outstanding.values()] }
}

/** What a decision asks takes the place of what the difference by itself asked. */
function outstandingOf({ says, next, decided }: Standing): Outstanding {
  const who = decided === null ? null : AWAITS[decided]
  return who === null || decided === null ? { says, ...next } : { says, who, what: ASKED[decided] }
}

const ASKED: { readonly [A in DecisionAction]: string } = {
  'correct-record': 'nothing: the record was corrected',
  accept: 'nothing: it was accepted',
  'require-permit': 'get the permit that the county requires for what is there',
  'require-repair': 'have it repaired by a licensed installer, and inspected again',
  'ask-remeasurement': 'measure it again and hand in amended findings',
}

const isOpen = ({ severity, decided }: Standing): boolean =>
  severity !== 'note' && (decided === null || AWAITS[decided] !== null)

/** A requirement laid on the owner is an action, however mild the difference that led to it. */
const asksOwner = ({ severity, decided }: Standing): boolean =>
  decided === null ? severity === 'action' : AWAITS[decided] === 'owner'

const rank = (standing: Standing): number => (asksOwner(standing) ? 0 : 1)

function wordFor(input: StatusInput, open: readonly Standing[]): StatusWord {
  if (open.some(asksOwner)) return 'action-needed'
  if (!input.hasApprovedPermit && open.some(({ kind }) => NO_RECORD.includes(kind))) return 'no-record'
  if (!input.hasInspection) return 'not-inspected'
  if (open.some(({ kind }) => kind === 'findings-stale')) return 'out-of-date'
  if (open.length > 0) return 'under-review'
  const decided = input.discrepancies.some(
    ({ severity, decided: action }) => severity !== 'note' && action !== null,
  )
  return decided || input.decidedBefore ? 'settled' : 'agrees'
}

/** No permit at all, or none that was ever approved. */
const NO_RECORD: readonly DiscrepancyKind[] = ['record-absent', 'record-unclear']

const SENTENCES: { readonly [W in StatusWord]: string } = {
  'no-record': 'The county has no approved record of a septic system on this parcel.',
  'not-inspected': 'No inspection of the septic system has been compared with the county’s record yet.',
  agrees: 'What the last inspection found agrees with the county’s record.',
  'under-review': 'There are questions about the septic system that the county is looking at.',
  'action-needed': 'Something has to be done about the septic system before it can be relied on.',
  settled: 'The county has looked at every difference and decided it; nothing is open.',
  'out-of-date': 'The last inspection no longer counts: a new one is needed.',
}
