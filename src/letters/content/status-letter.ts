import type { NonEmpty } from '../../base/non-empty.ts'
import { DEFERENCE } from '../../brief/cautions.ts'
import type { Severity } from '../../reconcile/kinds.ts'
import type { Actor } from '../../reconcile/meaning/meaning.ts'
import { sentence } from '../../reconcile/meaning/meaning.ts'
import type { Outcome, Subject } from '../../reconcile/outcome.ts'
import type { Reconciliation } from '../../reconcile/reconcile.ts'
import type { ParcelStatus, StatusWord } from '../../reconcile/status.ts'
import type { PermitRef } from '../../records/as-built.ts'
import type { DecisionAction } from '../../records/decision.ts'
import { printDay } from './day.ts'
import type { LetterFrame } from './frame.ts'
import { topicOf } from './topics.ts'

/** A difference that stands, in the words for agents. */
export type StandingInLetter = {
  readonly says: string
  readonly severity: Severity
  /** The decision in force, where its ground holds. */
  readonly decided: DecisionAction | null
}

export type StatusLetterFacts = {
  readonly status: ParcelStatus
  /** Null where nothing is on file and nobody has inspected. */
  readonly reconciliation: Reconciliation | null
  /** Worst first. */
  readonly standing: readonly StandingInLetter[]
}

/** How much is told before "and 3 more", and how large: a letter is one page, whatever the file holds. */
export type Room = {
  readonly rows: number
  readonly lines: number
  readonly labels: number
  /** Of the body's type, against its usual size. */
  readonly scale: number
}

/** From ample to tight: what agrees gives way first, what somebody has to do last. The last one fits any file. */
export const ROOMS: NonEmpty<Room> = [
  { rows: 40, lines: 20, labels: 40, scale: 1 },
  { rows: 40, lines: 10, labels: 6, scale: 0.94 },
  { rows: 12, lines: 8, labels: 4, scale: 0.88 },
  { rows: 8, lines: 6, labels: 2, scale: 0.88 },
  { rows: 6, lines: 4, labels: 2, scale: 0.84 },
  { rows: 3, lines: 2, labels: 1, scale: 0.84 },
]

export type StatusLetter = {
  readonly frame: LetterFrame
  readonly scale: number
  readonly word: StatusWord
  readonly wordInWords: string
  readonly sentence: string
  readonly basis: string
  readonly open: readonly { readonly says: string; readonly who: string; readonly what: string }[]
  readonly openMore: string | null
  readonly closed: readonly { readonly says: string; readonly how: string }[]
  readonly closedMore: string | null
  readonly agrees: readonly { readonly what: string; readonly labels: string }[]
  readonly agreesMore: string | null
  readonly notSeen: readonly string[]
  readonly notSeenMore: string | null
  readonly undecided: readonly { readonly what: string; readonly labels: string }[]
  readonly undecidedMore: string | null
  readonly caution: string
  readonly deference: string
}

export const STATUS_IN_WORDS: { readonly [W in StatusWord]: string } = {
  'no-record': 'No record',
  'not-inspected': 'Not inspected',
  agrees: 'Agrees',
  'under-review': 'Under review',
  'action-needed': 'Action needed',
  settled: 'Settled',
  'out-of-date': 'Out of date',
}

export const ACTORS_IN_WORDS: { readonly [A in Actor]: string } = {
  owner: 'The owner',
  firm: 'The inspection firm',
  reviewer: 'The county',
  nobody: 'Nobody',
}

/** For a reader who may walk over the system or have it opened; the whole list stands in every inspection brief. */
const CAUTION =
  'Keep off old tanks, pits and their covers, and never open, enter or lean into one: covers give way, and air that ' +
  'looks clear can kill. Keep children away from any opening. Call 811 days before anyone digs; private lines are not ' +
  'marked. Opening a system is work for licensed people.'

/**
 * What one letter to an agent or lender shows: status, what differs and who has to act, what agrees, and what nobody
 * looked at. Names components as the county's record does and takes no other word of the inspector's or the scan's.
 */
export function statusLetter(frame: LetterFrame, facts: StatusLetterFacts, room: Room): StatusLetter {
  const { status, reconciliation, standing } = facts
  const outcomes = reconciliation?.outcomes ?? []
  const known = new Set(status.outstanding.map(({ says }) => says))
  const closed = standing
    .filter(({ says }) => !known.has(says))
    .map(({ says, decided }) => ({ says, how: decided ? CLOSED[decided] : 'Noted; nothing is needed.' }))
  const open = cut(status.outstanding, room.rows)
  const past = cut(
    unique(closed, ({ says }) => says),
    room.rows,
  )
  const agrees = cut(agreeing(outcomes, room.labels), room.lines)
  const notSeen = cut(unseen(outcomes, reconciliation), room.lines)
  const undecided = cut(leftOpen(outcomes, room.labels), Math.min(room.lines, 6))
  return {
    frame,
    scale: room.scale,
    word: status.word,
    wordInWords: STATUS_IN_WORDS[status.word],
    sentence: status.sentence,
    basis: basisOf(reconciliation),
    open: open.shown.map(({ says, who, what }) => ({
      says,
      who: ACTORS_IN_WORDS[who],
      what: sentence(what),
    })),
    openMore: more(open.left),
    closed: past.shown,
    closedMore: more(past.left),
    agrees: agrees.shown,
    agreesMore: more(agrees.left),
    notSeen: notSeen.shown,
    notSeenMore: more(notSeen.left),
    undecided: undecided.shown,
    undecidedMore: more(undecided.left),
    caution: CAUTION,
    deference: DEFERENCE,
  }
}

const CLOSED: { readonly [A in DecisionAction]: string } = {
  'correct-record': 'Decided: the county corrected its record.',
  accept: 'Decided: the county accepted it, with a reason on file.',
  'require-permit': 'Decided: a permit is required.',
  'require-repair': 'Decided: a repair is required.',
  'ask-remeasurement': 'Decided: it has to be measured again.',
}

function basisOf(reconciliation: Reconciliation | null): string {
  if (!reconciliation) return 'Nothing is on file for this parcel, and no inspection has been handed in.'
  const { asBuilt, findings } = reconciliation
  const [first] = asBuilt.permits
  const file = first
    ? `The county’s file (${cut(asBuilt.permits, 3).shown.map(permitInWords).join('; ')}${asBuilt.permits.length > 3 ? `; and ${asBuilt.permits.length - 3} more` : ''})`
    : 'The county’s file, which has no approved permit,'
  return findings === null
    ? `${file}. No inspection has been handed in.`
    : `${file} compared with the inspection of ${printDay(asBuilt.on)}.`
}

const permitInWords = ({ number, approvedOn }: PermitRef): string =>
  `permit ${number}${approvedOn ? `, approved ${printDay(approvedOn)}` : ''}`

const WELL = new Set(['agrees', 'suffices'])
const BADLY = new Set(['differs', 'falls-short'])
const OPEN = new Set(['cannot-tell', 'too-close-to-call'])

/** By topic, so that twelve components still make a short list; what one rule grants and another denies is left out. */
function agreeing(outcomes: readonly Outcome[], labels: number) {
  const denied = new Set(outcomes.filter(({ verdict }) => BADLY.has(verdict)).map(askedOf))
  return byTopic(
    outcomes.filter((it) => WELL.has(it.verdict) && !denied.has(askedOf(it))),
    'agrees',
    labels,
  )
}

const leftOpen = (outcomes: readonly Outcome[], labels: number) =>
  byTopic(
    outcomes.filter(({ verdict, check }) => OPEN.has(verdict) && check !== 'component-presence'),
    'open',
    labels,
  )

const askedOf = ({ check, facet, subject }: Outcome): string =>
  `${topicOf(check, facet)?.agrees} | ${subject.key}`

function byTopic(outcomes: readonly Outcome[], side: 'agrees' | 'open', most: number) {
  const topics = new Map<string, Set<string>>()
  for (const { check, facet, subject } of outcomes) {
    const words = topicOf(check, facet)?.[side]
    if (words === undefined) continue
    const labels = topics.get(words) ?? new Set()
    if (subject.kind !== 'system') labels.add(nameOf(subject))
    topics.set(words, labels)
  }
  return [...topics].map(([what, labels]) => ({ what, labels: listed([...labels], most) }))
}

/** As the county's record names it; a thing only the inspector named is called by its kind. */
const nameOf = ({ key, label, kind }: Subject): string =>
  key.startsWith('found/') ? kind.replaceAll('-', ' ') : label

/** Not reached and not looked for, with the reason: the checks' own words, which hold none of the inspector's notes. */
function unseen(outcomes: readonly Outcome[], reconciliation: Reconciliation | null): readonly string[] {
  if (reconciliation?.findings == null) return ['Nothing in the ground: no inspection has been handed in.']
  return outcomes
    .filter(({ check, verdict }) => check === 'component-presence' && OPEN.has(verdict))
    .map(({ because }) => sentence(because.replace(/: see the note$/, '')))
}

function listed(labels: readonly string[], most: number): string {
  const { shown, left } = cut(labels, most)
  return left > 0 ? `${shown.join(', ')} and ${left} more` : shown.join(', ')
}

const cut = <T>(all: readonly T[], most: number): { readonly shown: readonly T[]; readonly left: number } =>
  all.length <= most ? { shown: all, left: 0 } : { shown: all.slice(0, most), left: all.length - most }

const more = (left: number): string | null =>
  left > 0 ? `And ${left} more, named in the county’s file.` : null

const unique = <T>(all: readonly T[], by: (one: T) => string): readonly T[] => [
  ...new Map(all.map((one) => [by(one), one])).values(),
]
