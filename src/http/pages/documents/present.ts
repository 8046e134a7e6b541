import type { DocumentRead } from '../../../operations/documents/read-document.ts'
import type { ProposedField, ProposedPermit } from '../../../reading/proposal.ts'
import type { Box } from '../../../records/source.ts'
import { confirmedIn } from './confirmed.ts'
import type { Faults } from './faults.ts'
import { type Asked, leftOut, PERMIT_FIELDS, partFields, seenName } from './fields.ts'
import { type Sureness, surenessOf } from './sureness.ts'
import { partsIn, type Typed, typedFromProposal } from './typed.ts'

export type Place = { readonly page: number; readonly box: Box; readonly words: string }

export type FieldShown = Asked & {
  readonly value: string
  readonly sureness: Sureness
  readonly doubts: readonly string[]
  /** Readings that would pass. */
  readonly readings: readonly string[]
  readonly fault: string | undefined
  readonly seen: boolean
  readonly place: Place | null
  /** Where the focus is when the page opens. */
  readonly first: boolean
}

export type PartShown = {
  readonly index: number
  readonly title: string
  readonly isOut: boolean
  readonly fields: readonly FieldShown[]
  readonly others: readonly FieldShown[]
}

export type Difference = { readonly what: string; readonly yours: string; readonly stands: string }

export type FormShown = {
  readonly permit: number
  readonly version: number
  readonly fields: readonly FieldShown[]
  readonly others: readonly FieldShown[]
  readonly parts: readonly PartShown[]
  readonly parcelAddress: string | null
  readonly formFault: string | undefined
  readonly notice: string | null
  readonly differences: readonly Difference[]
  /** Nothing is left to check: the focus is on the button. */
  readonly isReady: boolean
}

/** A form that came back. */
export type Returned = {
  readonly typed: Typed
  readonly faults: Faults
  readonly notice: string | null
  /** Somebody else changed the document meanwhile: its values now are shown beside what was typed. */
  readonly isStale: boolean
}

/** The form of one permit of a document: as read, or as it was typed and came back. */
export function presentForm(read: DocumentRead, permit: number, returned: Returned | null): FormShown {
  const { document } = read
  const proposal = read.proposals.get(permit) ?? null
  const typed = returned?.typed ?? typedFromProposal(proposal)
  const faults = returned?.faults ?? {}
  const parts = Math.max(partsIn(typed), Number(typed.parts) || 0)
  const byPart = Array.from({ length: parts }, (_, part) =>
    partFields(part, typed[`/components/${part}/kind`]),
  )
  const asked = [...PERMIT_FIELDS, ...byPart.flat()]
  const byName = new Map((proposal?.fields ?? []).map((field) => [field.pointer, field]))
  const faint = new Map(unsureOf(proposal).map((field) => [field.pointer, field]))
  if (proposal?.parcelNumber) byName.set('/parcel', proposal.parcelNumber)
  // Where somebody else was faster, the page starts at the top, with what they did.
  const first = returned?.isStale ? null : firstToCheck(asked, typed, faults, byName)
  const shown = (it: Asked): FieldShown => {
    const field = byName.get(it.name)
    const seenAt = field ?? faint.get(it.name)
    return {
      ...it,
      value: typed[it.name] ?? '',
      sureness: surenessOf(field),
      doubts: (field?.doubts ?? []).map(({ says }) => says),
      readings: [...new Set((field?.doubts ?? []).flatMap(({ readings }) => readings.map(String)))],
      fault: faults[it.name],
      seen: typed[seenName(it.name)] !== undefined,
      place: seenAt ? { page: seenAt.page, box: seenAt.box, words: seenAt.words } : null,
      first: it.name === first,
    }
  }
  const isShown = ({ name, always, value, place, fault }: FieldShown): boolean =>
    always || value !== '' || place !== null || fault !== undefined || name === first
  const split = (fields: readonly Asked[]) => {
    const all = fields.map(shown)
    return { fields: all.filter(isShown), others: all.filter((it) => !isShown(it)) }
  }
  return {
    permit,
    version: document.revision,
    ...split(PERMIT_FIELDS),
    parts: byPart.map((fields, index) => ({
      index,
      title: typed[`/components/${index}/tag`]?.trim() || 'Component',
      isOut: typed[leftOut(index)] !== undefined,
      ...split(fields),
    })),
    parcelAddress: proposal?.address ? String(proposal.address.value) : null,
    formFault: faults.form,
    notice: returned?.notice ?? null,
    differences: returned?.isStale ? differencesFrom(read, permit, typed, asked) : [],
    isReady: first === null && !returned?.isStale,
  }
}

/** Read with too little confidence to be filled in: the field is empty and shows where to look. Older readings have none. */
const unsureOf = (proposal: ProposedPermit | null): readonly ProposedField[] => proposal?.unsure ?? []

const NEEDED = ['/parcel', '/number', '/kind']

function firstToCheck(
  asked: readonly Asked[],
  typed: Typed,
  faults: Faults,
  fields: ReadonlyMap<string, ProposedField>,
): string | null {
  const first =
    asked.find(({ name }) => faults[name] !== undefined) ??
    asked.find(({ name }) => {
      if (NEEDED.includes(name) && !typed[name]?.trim()) return true
      return surenessOf(fields.get(name)) === 'check' && typed[seenName(name)] === undefined
    })
  return first?.name ?? null
}

/** Value by value, where what was typed is not what stands now: confirmed by somebody, or proposed anew. */
function differencesFrom(
  { proposals, transcriptions }: DocumentRead,
  permit: number,
  typed: Typed,
  asked: readonly Asked[],
): readonly Difference[] {
  const confirmed = confirmedIn(transcriptions).find((it) => it.proposal === permit)?.typed
  const stands = confirmed ?? typedFromProposal(proposals.get(permit) ?? null)
  const labels = new Map(asked.map(({ name, label }) => [name, label]))
  return [...new Set([...asked.map(({ name }) => name), ...Object.keys(stands)])].flatMap((name) => {
    const [yours, now] = [typed[name]?.trim() ?? '', stands[name]?.trim() ?? '']
    if (yours === now) return []
    const tag = /^(\/components\/\d+)\//.exec(name)?.[1]
    const part = tag && (typed[`${tag}/tag`] ?? stands[`${tag}/tag`])
    return [{ what: [part, labels.get(name) ?? name].filter(Boolean).join(', '), yours, stands: now }]
  })
}

/** The pages of a permit; all of the document's where nothing was proposed. */
export const pagesOfPermit = (
  { document }: DocumentRead,
  proposal: ProposedPermit | null,
): readonly number[] =>
  proposal && proposal.pages.length > 0
    ? proposal.pages
    : Array.from({ length: Math.min(document.pages ?? 1, 20) }, (_, index) => index + 1)
