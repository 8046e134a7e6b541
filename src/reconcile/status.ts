import type { PlainDate } from '../base/plain-date.ts'
import type { SystemUse } from '../catalog/choices.ts'
import { AWAITS, type DecisionAction, isWaiver, type Waiver } from '../records/decision.ts'
import { markOf } from '../records/part.ts'
import { type System, servedBy } from '../records/system.ts'
import type { OurText } from '../records/whose.ts'
import { ACTOR_OF, type Act } from './acts.ts'
import { type Detail, detailOf, type OpenPart, openPart } from './detail.ts'
import type { DiscrepancyKind, Severity } from './kinds.ts'
import type { Discrepancy } from './reconcile.ts'

/** A parcel in one word. The first that applies wins. */
export const STATUS_WORDS = [
  'action-needed',
  'no-record',
  'not-inspected',
  'out-of-date',
  'incomplete',
  'under-review',
  'resolved',
  'matches',
] as const
export type StatusWord = (typeof STATUS_WORDS)[number]

/** Whose turn it is. */
export const ITEM_STATES = ['owner-must-act', 'inspector-must-measure', 'county-reviewing'] as const
export type ItemState = (typeof ITEM_STATES)[number]

/** What is required: what the difference by itself leads to, or what a reviewer decided in its place. */
export type Required =
  | { readonly by: 'rule'; readonly act: Act }
  | { readonly by: 'decision'; readonly act: DecisionAction }

/**
 * One thing that is open, in full, for whoever may know a parcel's status. It names its part by kind and mark. It holds
 * nothing that a firm, a permit or a reviewer wrote, nor the id of the discrepancy, so that nothing of theirs can reach
 * an agent by it.
 */
export type OpenItem = {
  readonly kind: DiscrepancyKind
  readonly part: OpenPart
  readonly detail: Detail
  readonly state: ItemState
  readonly required: Required
  /** By when; null where no day is set. */
  readonly due: PlainDate | null
  /** Which system it is about, where the parcel has more than its own. */
  readonly system?: SystemTold
}

/** A system as everybody may know it: what it serves, and what tells it from others of its kind. No name of anybody's. */
export type SystemTold = { readonly use: SystemUse; readonly mark: OurText | null }

/** How one system stands, and how it stands to the parcel. */
export type SystemStatus = SystemTold & {
  readonly word: StatusWord
  readonly inspected: boolean
  /** It serves the parcel; false where it only lies on it. */
  readonly serves: boolean
  /** It serves another parcel too, or lies on one that it does not serve. */
  readonly shared: boolean
}

/** Something that the inspection left out and that the county does without, for one of the reasons of a list. */
export type WaivedItem = OpenItem & { readonly waiver: Waiver }

/** A discrepancy as the status sees it: what it is, and what a reviewer has done about it. */
export type Standing = {
  readonly discrepancy: Discrepancy
  /** The decision in force; null while there is none, or when its ground has moved since. */
  readonly decided: DecisionAction | null
  /** Which system it is on, where the parcel has more than its own. */
  readonly system?: SystemTold
}

export type StatusInput = {
  readonly hasApprovedPermit: boolean
  readonly hasInspection: boolean
  readonly standing: readonly Standing[]
  /** A decision was made about something that no longer differs: a record that was corrected, a part put back. */
  readonly decidedBefore: boolean
}

export type ParcelStatus = {
  readonly word: StatusWord
  /** What is open, those who must act first. The word follows from them. */
  readonly items: readonly OpenItem[]
  /** What nobody looked at, and the county waived: no longer open, and always told. */
  readonly waived: readonly WaivedItem[]
  /** Each of its systems; left out where it has its own alone. */
  readonly systems?: readonly SystemStatus[]
}

/**
 * The parcel's one word and what is open. Each open thing has a state of its own, and the word follows from the states:
 * what somebody must do comes first; an empty file or an inspection that no longer counts comes before the questions
 * they leave open; notes never count.
 */
export function statusOf(input: StatusInput): ParcelStatus {
  const items = input.standing
    .filter(isOpen)
    .map(itemOf)
    .filter(toldOnce)
    .sort((a, b) => ITEM_STATES.indexOf(a.state) - ITEM_STATES.indexOf(b.state))
  const waived = input.standing.flatMap((it) =>
    it.decided !== null && isWaiver(it.decided) ? [{ ...itemOf(it), waiver: it.decided }] : [],
  )
  return { word: wordFor(input, items), items, waived }
}

/**
 * The status of a parcel with all the systems that serve it or lie on it: the word that comes first of any of them, so that
 * one that nobody inspected keeps the parcel from matching.
 */
export function overSystems(
  parcel: string,
  standings: readonly {
    readonly system: System
    readonly status: ParcelStatus
    readonly inspected: boolean
  }[],
): ParcelStatus {
  const [only, ...others] = standings
  if (only && others.length === 0 && only.system.id === parcel && !reachesOut(only.system)) return only.status
  const told = toldOf(standings.map(({ system }) => system))
  const gathered = <T extends OpenItem>(of: (status: ParcelStatus) => readonly T[]): readonly T[] =>
    standings.flatMap(({ status }, at) => of(status).map((it) => ({ ...it, system: told[at]! })))
  return {
    word: STATUS_WORDS.find((word) => standings.some(({ status }) => status.word === word))!,
    items: gathered(({ items }) => items).toSorted(
      (a, b) => ITEM_STATES.indexOf(a.state) - ITEM_STATES.indexOf(b.state),
    ),
    waived: gathered(({ waived }) => waived),
    systems: standings.map(({ system, status, inspected }, at) => ({
      ...told[at]!,
      word: status.word,
      inspected,
      serves: servedBy(system).some((it) => it.parcel === parcel),
      shared: reachesOut(system),
    })),
  }
}

/** Each by what it serves; those that it does not tell apart by the mark of their label, else by their place in the list. */
export const toldOf = (systems: readonly System[]): readonly SystemTold[] =>
  systems.map(({ use, label }, at) => {
    const alike = systems.filter((it) => it.use === use).length > 1
    return { use, mark: alike ? (markOf(label ?? '') ?? markOf(`system ${at + 1}`)) : null }
  })

/** It serves several parcels, or one and lies on another. */
const reachesOut = (system: System): boolean => system.parcels.length > 1

/** What the file contradicts itself on is one thing to whoever reads a status, however many figures it touches. */
function toldOnce(item: OpenItem, at: number, all: readonly OpenItem[]): boolean {
  const same = (other: OpenItem): boolean =>
    item.kind === 'record-unclear' &&
    other.kind === 'record-unclear' &&
    other.state === item.state &&
    other.detail.neverApproved === item.detail.neverApproved &&
    other.detail.unsaid === item.detail.unsaid
  return item.kind !== 'record-unclear' || all.findIndex(same) === at
}

export function itemOf({ discrepancy, decided, system }: Standing): OpenItem {
  const { kind, act, outcome } = discrepancy
  const awaits = decided === null ? null : AWAITS[decided]
  return {
    kind,
    part: openPart(outcome.subject),
    detail: detailOf(outcome),
    state: stateOf(discrepancy, awaits),
    required: decided === null || awaits === null ? { by: 'rule', act } : { by: 'decision', act: decided },
    due: null,
    ...(system ? { system } : {}),
  }
}

/** A decision that leaves something to do says whose turn it is; without one, what the difference leads to does. */
function stateOf({ act, severity }: Discrepancy, awaits: 'owner' | 'firm' | null): ItemState {
  if (awaits === 'owner') return 'owner-must-act'
  if (awaits === 'firm') return 'inspector-must-measure'
  switch (ACTOR_OF[act]) {
    case 'owner':
      return severity === 'action' ? 'owner-must-act' : 'county-reviewing'
    case 'firm':
      return 'inspector-must-measure'
    case 'reviewer':
    case 'nobody':
      return 'county-reviewing'
  }
}

export const isOpen = ({ discrepancy, decided }: Standing): boolean =>
  discrepancy.severity !== 'note' && (decided === null || AWAITS[decided] !== null)

/** No permit at all, or none that was ever approved. */
const NO_RECORD: readonly DiscrepancyKind[] = ['record-absent', 'record-unclear']

function wordFor(input: StatusInput, items: readonly OpenItem[]): StatusWord {
  const has = (kinds: readonly DiscrepancyKind[]): boolean => items.some(({ kind }) => kinds.includes(kind))
  if (items.some(({ state }) => state === 'owner-must-act')) return 'action-needed'
  if (!input.hasApprovedPermit && has(NO_RECORD)) return 'no-record'
  if (!input.hasInspection) return 'not-inspected'
  if (has(['findings-stale'])) return 'out-of-date'
  if (has(['inspection-incomplete'])) return 'incomplete'
  if (items.length > 0) return 'under-review'
  const decided = input.standing.some(
    ({ discrepancy: { severity }, decided: action }) => counts(severity) && action !== null,
  )
  return decided || input.decidedBefore ? 'resolved' : 'matches'
}

const counts = (severity: Severity): boolean => severity !== 'note'
