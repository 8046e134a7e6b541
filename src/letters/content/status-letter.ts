import type { NonEmpty } from '../../base/non-empty.ts'
import { openPart } from '../../reconcile/detail.ts'
import type { Outcome, Verdict } from '../../reconcile/outcome.ts'
import {
  isOpen,
  itemOf,
  type OpenItem,
  type ParcelStatus,
  type Standing,
  type StatusWord,
} from '../../reconcile/status.ts'
import type { PermitRef } from '../../records/as-built.ts'
import type { OurText } from '../../records/whose.ts'
import { LETTER_COPY, type LetterCopy, type LetterText, letterText } from '../../words/agent/letter.ts'
import { STATE_TOLD } from '../../words/agent/standing.ts'
import { type ItemTold, itemWords, statusWords, VOICES } from '../../words/agent/status.ts'
import { systemTold } from '../../words/agent/systems.ts'
import { topicOf } from '../../words/agent/topics.ts'
import { printDate } from '../../words/date.ts'
import type { Language } from '../../words/language.ts'
import { ours, oursCapital } from '../../words/ours.ts'
import type { LetterFrame } from './frame.ts'
import { type SystemFile, unseen } from './unseen.ts'

export type StatusLetterFacts = {
  readonly status: ParcelStatus
  /** Of each system on the parcel, its own first. */
  readonly files: NonEmpty<SystemFile>
  /** All that differs, with what was decided about it. */
  readonly standing: readonly Standing[]
}

/** How much is told, and how large: a letter is one page, whatever the file holds. */
export type Room = {
  /** Rows of what the county reviews and of what is closed. What the owner must do is told in full, always. */
  readonly rows: number
  readonly lines: number
  readonly labels: number
  /** Of the body's type, against its usual size. */
  readonly scale: number
}

/** From ample to tight: what matches gives way first. What somebody must do is never cut. */
export const ROOMS: NonEmpty<Room> = [
  { rows: 40, lines: 20, labels: 40, scale: 1 },
  { rows: 40, lines: 10, labels: 6, scale: 0.94 },
  { rows: 12, lines: 8, labels: 4, scale: 0.88 },
  { rows: 8, lines: 6, labels: 2, scale: 0.88 },
  { rows: 4, lines: 4, labels: 2, scale: 0.84 },
  { rows: 2, lines: 2, labels: 1, scale: 0.8 },
  { rows: 0, lines: 1, labels: 1, scale: 0.72 },
]

type Row = {
  readonly about: OurText
  readonly says: OurText
  readonly state: OurText
  readonly required: OurText
}

export type StatusLetter = {
  readonly frame: LetterFrame
  readonly copy: LetterText
  readonly scale: number
  readonly word: StatusWord
  readonly title: OurText
  readonly sentence: OurText
  readonly basis: string
  /** How each system stands, where there are several or one is shared. */
  readonly systems: readonly OurText[]
  /** Open things by the part they are about. */
  readonly open: readonly { readonly about: OurText; readonly rows: readonly Row[] }[]
  readonly openMore: OurText | null
  readonly notes: OurText | null
  readonly closed: readonly { readonly about: OurText; readonly says: OurText; readonly how: OurText }[]
  readonly closedMore: OurText | null
  readonly agrees: readonly Line[]
  readonly agreesMore: OurText | null
  readonly notSeen: readonly OurText[]
  readonly notSeenMore: OurText | null
  readonly undecided: readonly Line[]
  readonly undecidedMore: OurText | null
}

type Line = { readonly what: OurText; readonly labels: OurText }

/**
 * What one letter to an agent or lender shows: status, what differs and whose turn it is, what matches, and what was not
 * inspected. Our own words alone; a permit is named by its number and a part by its kind.
 */
export function statusLetter(frame: LetterFrame, facts: StatusLetterFacts, room: Room): StatusLetter {
  const { status, files, standing } = facts
  const { language } = frame
  const copy = LETTER_COPY[language]
  const told = statusWords(status, language)
  const musts = status.items.filter(({ state }) => state !== 'county-reviewing')
  const reviewing = cut(
    status.items.filter(({ state }) => state === 'county-reviewing'),
    room.rows,
  )
  const closed = cut(closedItems(standing), room.rows)
  const agrees = cut(
    files.flatMap((it) => named(it, agreeing(outcomesOf(it), room.labels, language), language)),
    room.lines,
  )
  const notSeen = cut(
    files.flatMap((it) => unseen(it, copy, language)),
    room.lines,
  )
  const undecided = cut(
    files.flatMap((it) => named(it, leftOpen(outcomesOf(it), room.labels, language), language)),
    Math.min(room.lines, 6),
  )
  const notes = standing.filter(
    ({ discrepancy: { severity }, decided }) => severity === 'note' && decided === null,
  )
  const more = (left: number): OurText | null => (left > 0 ? copy.more(left) : null)
  return {
    frame,
    copy: letterText(language),
    scale: room.scale,
    word: told.word,
    title: told.title,
    sentence: told.sentence,
    basis: files.map((it) => basisOf(it, copy, language)).join(' '),
    systems: told.systems.map(({ name, title, notes }) =>
      notes.reduce((all, note) => ours`${all} ${note}`, ours`${oursCapital(name)}: ${title}.`),
    ),
    open: byPart([...musts, ...reviewing.shown], language),
    openMore: reviewing.left > 0 ? copy.moreReviewing(reviewing.left) : null,
    notes: notes.length > 0 ? copy.notes(notes.length) : null,
    closed: closed.shown.map(({ item, how }) => {
      const { about, says } = itemWords(item, language)
      return { about, says, how: copy.how[how] }
    }),
    closedMore: more(closed.left),
    agrees: agrees.shown,
    agreesMore: more(agrees.left),
    notSeen: notSeen.shown,
    notSeenMore: more(notSeen.left),
    undecided: undecided.shown,
    undecidedMore: more(undecided.left),
  }
}

/**
 * Parts in the order of what is most pressing about them. The same about several parts of one kind is said once, with
 * all of them named, so that eighty collapsed pits are still one page and none is left out.
 */
function byPart(items: readonly OpenItem[], language: Language): StatusLetter['open'] {
  const { by } = LETTER_COPY[language]
  const alike = Map.groupBy(items, ({ part, ...rest }) => JSON.stringify([rest, { ...part, mark: null }]))
  const groups = new Map<OurText, Row[]>()
  for (const [first, ...others] of alike.values()) {
    if (!first) continue
    const several = others.length > 0
    const told = itemWords(several ? { ...first, part: { ...first.part, mark: null } } : first, language)
    const about = several ? namedTogether(told.about, [first, ...others]) : told.about
    const row = {
      about,
      says: told.says,
      state: STATE_TOLD[language][told.state],
      required: withDue(told, by, language),
    }
    groups.set(about, [...(groups.get(about) ?? []), row])
  }
  return [...groups].map(([about, rows]) => ({ about, rows }))
}

/** `Seepage pit 1, 2, B`; those that nothing tells apart are counted: `Seepage pit (3)`. */
function namedTogether(kind: OurText, items: readonly OpenItem[]): OurText {
  const marks = items.flatMap(({ part: { mark } }) => mark ?? [])
  const named = marks.reduce(
    (all, mark, at) => (at === 0 ? ours`${kind} ${mark}` : ours`${all}, ${mark}`),
    kind,
  )
  return marks.length === items.length ? named : ours`${named} (${items.length})`
}

const withDue = ({ required, due }: ItemTold, by: OurText, language: Language): OurText =>
  due === null ? required : ours`${required} ${by} ${printDate(due, language)}.`

/** What a reviewer closed. */
const closedItems = (standing: readonly Standing[]) =>
  standing.flatMap((it) =>
    it.decided !== null && !isOpen(it) ? [{ item: itemOf(it), how: it.decided }] : [],
  )

const outcomesOf = ({ file }: SystemFile): readonly Outcome[] => file?.answer.outcomes ?? []

/** Lines of one of several systems begin with which. */
const named = ({ system }: SystemFile, lines: readonly Line[], language: Language): readonly Line[] =>
  system === null
    ? lines
    : lines.map((it) => ({ ...it, what: ours`${oursCapital(systemTold(system, language))}: ${it.what}` }))

function basisOf({ system, file }: SystemFile, copy: LetterCopy, language: Language): string {
  const basis = basisOfFile(file, copy, language)
  return system === null ? basis : `${oursCapital(systemTold(system, language))}: ${basis}`
}

function basisOfFile(file: SystemFile['file'], copy: LetterCopy, language: Language): string {
  if (!file) return copy.noFile
  const { answer, permits, elsewhere = 0, on } = file
  const { shown, left } = cut(permits, 3)
  const named = shown.map((permit) => permitNamed(permit, copy, language)).join('; ')
  const paper =
    shown.length === 0 && elsewhere > 0
      ? `${copy.file} (${copy.elsewhere(elsewhere)})`
      : shown.length === 0
        ? copy.noApproved
        : `${copy.file} (${named}${left > 0 ? `; +${left}` : ''}${elsewhere > 0 ? `; ${copy.elsewhere(elsewhere)}` : ''})`
  return answer.findings === null
    ? `${paper}. ${copy.noInspection}`
    : `${paper}, ${copy.comparedWith} ${printDate(on, language)}.`
}

const permitNamed = ({ number, approvedOn }: PermitRef, copy: LetterCopy, language: Language): string =>
  `${copy.permit} ${number}${approvedOn ? `, ${copy.approved} ${printDate(approvedOn, language)}` : ''}`

const WELL: readonly Verdict[] = ['agrees', 'suffices']
const BADLY: readonly Verdict[] = ['differs', 'falls-short']
const OPEN: readonly Verdict[] = ['cannot-tell', 'too-close-to-call']

/** By topic, so that twelve components still make a short list; what one rule grants and another denies is left out. */
function agreeing(outcomes: readonly Outcome[], labels: number, language: Language): readonly Line[] {
  const askedOf = ({ check, facet, subject }: Outcome): string =>
    `${topicOf(language, check, facet)?.agrees} | ${subject.key}`
  const denied = new Set(outcomes.filter(({ verdict }) => BADLY.includes(verdict)).map(askedOf))
  return byTopic(
    outcomes.filter(
      (it) => WELL.includes(it.verdict) && !denied.has(askedOf(it)) && it.check !== 'inspection-completeness',
    ),
    'agrees',
    labels,
    language,
  )
}

const leftOpen = (outcomes: readonly Outcome[], labels: number, language: Language): readonly Line[] =>
  byTopic(
    outcomes.filter(
      ({ verdict, check }) =>
        OPEN.includes(verdict) && check !== 'component-presence' && check !== 'inspection-completeness',
    ),
    'open',
    labels,
    language,
  )

function byTopic(
  outcomes: readonly Outcome[],
  side: 'agrees' | 'open',
  most: number,
  language: Language,
): readonly Line[] {
  const topics = new Map<OurText, Set<OurText>>()
  for (const outcome of outcomes) {
    const { check, facet, subject } = outcome
    const topic = topicOf(language, check, facet)?.[side]
    if (topic === undefined) continue
    const words =
      side === 'agrees' && byRecordAlone(outcome) ? ours`${topic} (${LETTER_COPY[language].byRecord})` : topic
    const labels = topics.get(words) ?? new Set<OurText>()
    if (subject.kind !== 'system') labels.add(VOICES[language].part(openPart(subject)))
    topics.set(words, labels)
  }
  return [...topics].map(([what, labels]) => ({ what, labels: listedLabels([...labels], most) }))
}

/** A size that suffices as recorded was not seen to: whoever reads the letter must not take it for measured. */
const byRecordAlone = ({ check, exhibits }: Outcome): boolean =>
  ['capacity-against-code', 'capacity-by-flow', 'absorption-against-code', 'absorption-by-soil'].includes(
    check,
  ) && !exhibits.some(({ from }) => from.kind === 'inspection')

function listedLabels(labels: readonly OurText[], most: number): OurText {
  const { shown, left } = cut(labels, most)
  const joined = shown.reduce((all, label, at) => (at === 0 ? label : ours`${all}, ${label}`), ours``)
  return left > 0 ? ours`${joined} +${left}` : joined
}

const cut = <T>(all: readonly T[], most: number): { readonly shown: readonly T[]; readonly left: number } =>
  all.length <= most ? { shown: all, left: 0 } : { shown: all.slice(0, most), left: all.length - most }
