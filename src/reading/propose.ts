import { withSecond } from './agree.ts'
import { AS_EVERYWHERE, type OwnShares } from './assemble/own-shares.ts'
import { assembledPermit } from './assemble/permit.ts'
import { settled } from './assemble/settled.ts'
import { readingsOf } from './association/statements.ts'
import { withPlaces } from './family/read-places.ts'
import { readByRows } from './family/read-rows.ts'
import { recognize } from './family/recognize.ts'
import type { NamedForm } from './family/taught-form.ts'
import type { PageWords } from './page-words.ts'
import type { ParcelNumberFormat } from './parcel-number.ts'
import type { ProposedPermit } from './proposal.ts'
import { type PageSaid, splitIntoPermits } from './split.ts'
import type { PageReadings } from './statement.ts'

/**
 * What the pages of a document seem to say: one proposal for each permit on them, in the order of the pages and down
 * each. Pure; the same words, links and taught forms give the same proposals for ever. Pages without words belong to the
 * permit before them.
 */
export function proposePermits(
  pages: Iterable<PageWords>,
  format: ParcelNumberFormat,
  forms: readonly NamedForm[] = [],
  own: OwnShares = AS_EVERYWHERE,
): ProposedPermit[] {
  const { read, said } = saidByEach(pages, format, forms)
  return splitIntoPermits(said).map((group) => settled(assembled(group), read, own))
}

/** What the pages seem to say where they are known to be one permit: whoever cut them has said so. */
export function proposePermit(
  pages: Iterable<PageWords>,
  format: ParcelNumberFormat,
  forms: readonly NamedForm[] = [],
  own: OwnShares = AS_EVERYWHERE,
): ProposedPermit {
  const { read, said } = saidByEach(pages, format, forms)
  return settled(assembled(said), read, own)
}

/** Page by page: whoever hands the pages over knows which one is being read, and for how long. */
function saidByEach(pages: Iterable<PageWords>, format: ParcelNumberFormat, forms: readonly NamedForm[]) {
  const read: PageWords[] = []
  const said: Said[] = []
  for (const page of pages) {
    read.push(page)
    said.push(...saidBy(page, format, forms))
  }
  return { read, said }
}

type Said = PageSaid & { readonly family: string | null }

const assembled = (group: readonly Said[]): ProposedPermit => ({
  ...assembledPermit([...new Set(group.map(({ page }) => page))], {
    statements: group.flatMap(({ readings }) => readings.statements),
    mentions: group.flatMap(({ readings }) => readings.mentions),
  }),
  family: group.find(({ family }) => family !== null)?.family ?? null,
})

/** A scrap of so few values without a number of its own is no permit: it goes with the one before it. */
const LEAST_OF_A_PERMIT = 3

/** Where no two of a page's permits are told by a number or a parcel, it is a page of one. */
function oneOrSeveral(permits: readonly PageReadings[]): readonly PageReadings[] {
  const told = permits.filter(({ statements }) =>
    statements.some(({ ask }) => ask === 'number' || ask === 'parcelNumber'),
  )
  if (told.length > 1 || permits.length < 2) return permits
  return [
    {
      statements: permits.flatMap(({ statements }) => statements),
      mentions: permits.flatMap(({ mentions }) => mentions),
    },
  ]
}

/** What a page says of each of its permits, by its links and by the places of its form. */
function saidBy(page: PageWords, format: ParcelNumberFormat, forms: readonly NamedForm[]): Said[] {
  const context = { format, misread: page.readBy === 'picture' }
  const form = recognize(page, page.words, forms)
  const said = (family: string | null, { statements, mentions }: PageReadings): Said => ({
    page: page.page,
    family,
    readings: { statements: withSecond(page, statements, context), mentions },
  })
  const byRow = form && readByRows(page, form, context)
  if (byRow) return byRow.map((readings) => said(form.name, readings))
  const own = oneOrSeveral(readingsOf(page, context))
  const permits = own.filter(
    ({ statements }, nth) =>
      nth === 0 || statements.length >= LEAST_OF_A_PERMIT || statements.some(({ ask }) => ask === 'number'),
  )
  // Places of a sheet with one permit say nothing of a page with several.
  const isOne = form !== null && form.sheet.rows === undefined && permits.length < 2
  const first = permits[0] ?? { statements: [], mentions: [] }
  const readings = isOne ? [withPlaces(page, page.words, first, form, context)] : permits
  return (readings.length > 0 ? readings : [first]).map((it) => said(isOne ? form.name : null, it))
}
