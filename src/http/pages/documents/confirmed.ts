import type { ProposedPermit } from '../../../reading/proposal.ts'
import type { Transcription } from '../../../store/transcriptions.ts'
import { PERMIT_FIELDS, partFields } from './fields.ts'
import { partsIn, type Typed, typedFrom, typedFromProposal } from './typed.ts'

/** A permit as somebody confirmed it, with the proposal that it was made from. */
export type Confirmed = {
  readonly proposal: number | null
  readonly parcel: string
  readonly typed: Typed
  readonly at: Date
}

type Body = {
  readonly permits?: readonly {
    readonly parcel?: unknown
    readonly proposal?: unknown
    readonly entry?: unknown
  }[]
}

/** What was confirmed of a document, oldest first, as it was sent. */
export const confirmedIn = (transcriptions: readonly Transcription[]): readonly Confirmed[] =>
  transcriptions.flatMap(({ body, confirmedAt }) =>
    ((body as Body | null)?.permits ?? []).map(({ parcel, proposal, entry }) => ({
      proposal: typeof proposal === 'number' ? proposal : null,
      parcel: String(parcel ?? ''),
      typed: { '/parcel': String(parcel ?? ''), ...typedFrom(entry) },
      at: confirmedAt,
    })),
  )

/** As many as a page shows whole. */
const MOST_SHOWN = 20

/** The newest of them, newest last. */
export const confirmedShown = (transcriptions: readonly Transcription[]): readonly Confirmed[] =>
  confirmedIn(transcriptions).slice(-MOST_SHOWN)

/** Which proposals are confirmed. A document from which nothing was read is confirmed by the first permit typed. */
export const doneOf = (transcriptions: readonly Transcription[]): ReadonlySet<number> =>
  new Set(confirmedIn(transcriptions).map(({ proposal }) => proposal ?? 0))

export type ConfirmedValue = {
  readonly what: string
  readonly part: string | null
  readonly value: string
  readonly read: string
  readonly isCorrected: boolean
}

/** Value by value: as confirmed, and as it was read where that is something else. */
export function confirmedValues(
  { typed }: Confirmed,
  proposal: ProposedPermit | null,
): readonly ConfirmedValue[] {
  const proposed = typedFromProposal(proposal)
  const parts = partsIn(typed)
  const readPart = (tag: string | undefined): number =>
    proposal?.entry.components.findIndex((component) => component.tag === tag) ?? -1
  const values = (
    fields: ReturnType<typeof partFields>,
    part: string | null,
    asRead: (name: string) => string | undefined,
  ): ConfirmedValue[] =>
    fields.flatMap(({ name, label }) => {
      const [value, read] = [typed[name]?.trim() ?? '', asRead(name)?.trim() ?? '']
      return value === '' && read === ''
        ? []
        : [{ what: label, part, value, read, isCorrected: value !== read }]
    })
  return [
    ...values(PERMIT_FIELDS, null, (name) => proposed[name]),
    ...Array.from({ length: parts }, (_, index) => {
      const tag = typed[`/components/${index}/tag`]
      const from = readPart(tag)
      return values(
        partFields(index),
        tag ?? '',
        (name) => proposed[name.replace(/^\/components\/\d+/, `/components/${from}`)],
      )
    }).flat(),
  ]
}
