import { ownShares, type Tally } from './assemble/own-shares.ts'
import { parcelCandidates } from './check/parcel.ts'
import type { NamedForm } from './family/taught-form.ts'
import type { PageWords } from './page-words.ts'
import type { ParcelNumberFormat } from './parcel-number.ts'
import type { ProposedPermit } from './proposal.ts'
import { proposePermit, proposePermits } from './propose.ts'

/** What a document's pages are read with. */
export type ProposingAsked = {
  readonly format: ParcelNumberFormat
  readonly forms: readonly NamedForm[]
  /** What the county's own confirmations say of its readings. */
  readonly tallies: readonly Tally[]
  /** The pages of each permit where somebody has said so, else null: told by what the pages say. */
  readonly cuts: readonly (readonly number[])[] | null
}

export type Proposed = {
  readonly proposals: readonly ProposedPermit[]
  /** Parcel numbers worth looking up for them. */
  readonly candidates: readonly string[]
}

/**
 * From the words of a document's pages, in their order, to what they seem to say. `onPage` hears which page is looked at
 * next: a page on which too much time is spent can be left out.
 */
export function proposeDocument(
  pages: readonly PageWords[],
  { format, forms, tallies, cuts }: ProposingAsked,
  onPage: (page: number) => void = () => {},
): Proposed {
  function* told(read: readonly PageWords[]): Generator<PageWords> {
    for (const page of read) {
      onPage(page.page)
      yield page
    }
  }
  const own = ownShares(tallies)
  const byPage = new Map(pages.map((page) => [page.page, page]))
  const proposals =
    cuts === null
      ? proposePermits(told(pages), format, forms, own)
      : cuts.map((numbers) => {
          const read = numbers.flatMap((number) => byPage.get(number) ?? [])
          return { ...proposePermit(told(read), format, forms, own), pages: numbers }
        })
  return { proposals, candidates: proposals.flatMap(parcelCandidates) }
}
