import type { Tally } from '../../reading/assemble/own-shares.ts'
import { tallyOf } from '../../reading/assemble/tally.ts'
import { type Lesson, lessonFrom } from '../../reading/family/lesson.ts'
import type { EntryDraft, ProposedPermit } from '../../reading/proposal.ts'
import type { Box } from '../../records/source.ts'
import type { Tx } from '../../store/database/database.ts'
import { wordsOfPages } from '../../store/document-pages.ts'
import { documentById, proposalsAt } from '../../store/documents.ts'
import type { Teacher } from '../../store/taught-forms.ts'
import type { Transcription } from '../../store/transcriptions.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'

/** What of a transcription, as it was sent, a lesson needs. */
type Body = {
  readonly permits?: readonly {
    readonly parcel?: string
    readonly proposal?: number | null
    readonly entry?: EntryDraft
    readonly sources?: { readonly [pointer: string]: { readonly page: number; readonly box?: Box | null } }
  }[]
}

/** A confirmed permit, as a form is learned from it. */
export type Taught = {
  readonly teacher: Teacher
  readonly lesson: Lesson
  readonly pages: readonly number[]
  /** Which of its readings were confirmed as they were read. */
  readonly tallies: readonly Tally[]
}

/** More pages than a form has: a file that nobody cut. */
const MOST_PAGES = 10

/** The lessons of a transcription, one for each permit that it made. */
export async function lessonsOf(tx: Tx, county: string, made: Transcription): Promise<readonly Taught[]> {
  const document = await documentById(tx, county, made.document)
  if (!document) return []
  const places = permitsIn(made).flatMap(({ proposal }) => (typeof proposal === 'number' ? [proposal] : []))
  const proposals = await proposalsAt(tx, county, document.id, places)
  const taught: Taught[] = []
  for (const [permit, { parcel, proposal: from, entry, sources }] of permitsIn(made).entries()) {
    const proposal = typeof from === 'number' ? (proposals.get(from) ?? null) : null
    const pages = proposal?.pages ?? Array.from({ length: document.pages ?? 0 }, (_, index) => index + 1)
    if (!entry || pages.length > MOST_PAGES) continue
    const read = await wordsOfPages(tx, county, document.id, pages)
    if (read.length === 0) continue
    const onFile = parcel === undefined ? undefined : await parcelAsked(tx, county, parcel)
    const known = onFile?.ok ? onFile.value : null
    const paper = { parcelNumber: known?.number ?? null, address: known?.address ?? null }
    const where = { ...placesIn(proposal, entry), ...placed(sources) }
    const whole = { ...entry, components: entry.components ?? [] }
    const leaf = `${document.id} ${read[0]!.page}`
    const lesson = lessonFrom(leaf, read, whole, paper, where)
    const tallies = proposal ? tallyOf(proposal, whole, paper.parcelNumber) : []
    taught.push({
      teacher: { transcription: made.id, permit, document: document.id },
      lesson,
      pages,
      tallies,
    })
  }
  return taught
}

export const permitsIn = ({ body }: Transcription): NonNullable<Body['permits']> =>
  (body as Body | null)?.permits ?? []

type Places = { [pointer: string]: { readonly page: number; readonly box: Box } }

/** Where the reading found its values, by pointers into the entry that was confirmed; a tick is no place of a value. */
function placesIn(proposal: ProposedPermit | null, entry: EntryDraft): Places {
  const places: Places = {}
  if (proposal?.parcelNumber) places['/parcelNumber'] = proposal.parcelNumber
  if (proposal?.address) places['/address'] = proposal.address
  for (const field of proposal?.fields ?? []) {
    if (field.how === 'tick') continue
    const [, index, rest] = /^\/components\/(\d+)(\/.*)$/.exec(field.pointer) ?? []
    if (rest === undefined) {
      places[field.pointer] = field
      continue
    }
    const { tag } = proposal!.entry.components[Number(index)] ?? {}
    const at = (entry.components ?? []).findIndex((component) => component.tag === tag)
    if (at >= 0) places[`/components/${at}${rest}`] = field
  }
  return places
}

const placed = (sources: NonNullable<Body['permits']>[number]['sources']): Places =>
  Object.fromEntries(
    Object.entries(sources ?? {}).flatMap(([pointer, { page, box }]) =>
      box ? [[pointer, { page, box }]] : [],
    ),
  )
