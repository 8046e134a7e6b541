import { agreed } from './agree.ts'
import { assembledPermit } from './assemble/permit.ts'
import { settled } from './assemble/settled.ts'
import { readPage } from './find/read-page.ts'
import type { PageWords } from './page-words.ts'
import type { ParcelNumberFormat } from './parcel-number.ts'
import type { ProposedPermit } from './proposal.ts'
import { type PageSaid, splitIntoPermits } from './split.ts'
import type { PageReadings } from './statement.ts'

/**
 * What the pages of a document seem to say: one proposal for each permit on them, in page order. Pure; the same pages
 * give the same proposals for ever. Pages without words belong to the permit before them.
 */
export function proposePermits(pages: readonly PageWords[], format: ParcelNumberFormat): ProposedPermit[] {
  const said = pages.map((page) => ({ page: page.page, readings: readingsOf(page, format) }))
  return splitIntoPermits(said).map((group) => settled(assembled(group), pages))
}

/** What the pages seem to say where they are known to be one permit: whoever cut them has said so. */
export const proposePermit = (pages: readonly PageWords[], format: ParcelNumberFormat): ProposedPermit =>
  settled(assembled(pages.map((page) => ({ page: page.page, readings: readingsOf(page, format) }))), pages)

const assembled = (group: readonly PageSaid[]): ProposedPermit =>
  assembledPermit(
    group.map(({ page }) => page),
    {
      statements: group.flatMap(({ readings }) => readings.statements),
      mentions: group.flatMap(({ readings }) => readings.mentions),
    },
  )

function readingsOf(page: PageWords, format: ParcelNumberFormat): PageReadings {
  const context = { format, misread: page.readBy === 'picture' }
  const first = readPage(page, page.words, context)
  if (page.secondWords === null) return first
  return agreed(page, first, readPage(page, page.secondWords, context), context)
}
