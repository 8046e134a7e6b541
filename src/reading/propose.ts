import { assembledPermit } from './assemble/permit.ts'
import { readPage } from './find/read-page.ts'
import type { PageWords } from './page-words.ts'
import type { ParcelNumberFormat } from './parcel-number.ts'
import type { ProposedPermit } from './proposal.ts'
import { splitIntoPermits } from './split.ts'

/**
 * What the pages of a document seem to say: one proposal for each permit on them, in page order. Pure; the same pages
 * give the same proposals for ever. Pages without words belong to the permit before them.
 */
export function proposePermits(pages: readonly PageWords[], format: ParcelNumberFormat): ProposedPermit[] {
  const said = pages.map((page) => ({
    page: page.page,
    readings: readPage(page, page.words, { format, misread: page.readBy === 'picture' }),
  }))
  return splitIntoPermits(said).map((group) =>
    assembledPermit(
      group.map(({ page }) => page),
      {
        statements: group.flatMap(({ readings }) => readings.statements),
        mentions: group.flatMap(({ readings }) => readings.mentions),
      },
    ),
  )
}
