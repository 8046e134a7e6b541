import { agreed } from './agree.ts'
import { assembledPermit } from './assemble/permit.ts'
import { settled } from './assemble/settled.ts'
import { withPlaces } from './family/read-places.ts'
import { recognize } from './family/recognize.ts'
import type { NamedForm } from './family/taught-form.ts'
import { readPage } from './find/read-page.ts'
import type { PageWords, Word } from './page-words.ts'
import type { ParcelNumberFormat } from './parcel-number.ts'
import type { ProposedPermit } from './proposal.ts'
import { type PageSaid, splitIntoPermits } from './split.ts'
import type { PageReadings } from './statement.ts'

/**
 * What the pages of a document seem to say: one proposal for each permit on them, in page order. Pure; the same pages
 * and taught forms give the same proposals for ever. Pages without words belong to the permit before them.
 */
export function proposePermits(
  pages: Iterable<PageWords>,
  format: ParcelNumberFormat,
  forms: readonly NamedForm[] = [],
): ProposedPermit[] {
  const { read, said } = saidByEach(pages, format, forms)
  return splitIntoPermits(said).map((group) => settled(assembled(group), read))
}

/** What the pages seem to say where they are known to be one permit: whoever cut them has said so. */
export function proposePermit(
  pages: Iterable<PageWords>,
  format: ParcelNumberFormat,
  forms: readonly NamedForm[] = [],
): ProposedPermit {
  const { read, said } = saidByEach(pages, format, forms)
  return settled(assembled(said), read)
}

/** Page by page: whoever hands the pages over knows which one is being read, and for how long. */
function saidByEach(pages: Iterable<PageWords>, format: ParcelNumberFormat, forms: readonly NamedForm[]) {
  const read: PageWords[] = []
  const said: Said[] = []
  for (const page of pages) {
    read.push(page)
    said.push(saidBy(page, format, forms))
  }
  return { read, said }
}

type Said = PageSaid & { readonly family: string | null }

const assembled = (group: readonly Said[]): ProposedPermit => ({
  ...assembledPermit(
    group.map(({ page }) => page),
    {
      statements: group.flatMap(({ readings }) => readings.statements),
      mentions: group.flatMap(({ readings }) => readings.mentions),
    },
  ),
  family: group.find(({ family }) => family !== null)?.family ?? null,
})

/** Which form a page is, the better reader tells; what each reader sees at the form's places is its own. */
function saidBy(page: PageWords, format: ParcelNumberFormat, forms: readonly NamedForm[]): Said {
  const context = { format, misread: page.readBy === 'picture' }
  const readBy = (words: readonly Word[]): PageReadings => readPage(page, words, context)
  const form = recognize(page, page.words, forms)
  const first = form ? withPlaces(page, page.words, readBy(page.words), form, context) : readBy(page.words)
  const said = { page: page.page, family: form?.name ?? null }
  if (page.secondWords === null) return { ...said, readings: first }
  const theirs =
    form &&
    recognize(
      page,
      page.secondWords,
      forms.filter(({ name }) => name === form.name),
    )
  const own = readBy(page.secondWords)
  const second = theirs ? withPlaces(page, page.secondWords, own, theirs, context) : own
  return { ...said, readings: agreed(page, first, second, context) }
}
