import { invariant } from '../../base/invariant.ts'
import { checkedParcel, parcelCandidates } from '../../reading/check/parcel.ts'
import type { ProposedPermit } from '../../reading/proposal.ts'
import { proposePermit, proposePermits } from '../../reading/propose.ts'
import { countyById } from '../../store/counties.ts'
import type { Tx } from '../../store/database/database.ts'
import { wordsOf } from '../../store/document-pages.ts'
import { numbersAmong } from '../../store/parcels.ts'
import { formsInForce } from '../../store/taught-forms.ts'

/**
 * What the pages of a paper that was read seem to say, by labels and by the county's forms in force, each permit held
 * against the parcels that there are. `cuts`: the pages of each permit where somebody has said so, else by what they say.
 */
export async function proposeFromWords(
  tx: Tx,
  county: string,
  document: string,
  cuts: readonly (readonly number[])[] | null,
): Promise<readonly ProposedPermit[]> {
  const served = await countyById(tx, county)
  invariant(served, `a document of ${county}, which is no county`)
  const forms = await formsInForce(tx, county)
  const words = await wordsOf(tx, county, document)
  const byPage = new Map(words.map((page) => [page.page, page]))
  const proposals =
    cuts === null
      ? proposePermits(words, served.parcelFormat, forms)
      : cuts.map((pages) => {
          const read = pages.flatMap((page) => byPage.get(page) ?? [])
          return { ...proposePermit(read, served.parcelFormat, forms), pages }
        })
  const existing = await numbersAmong(tx, county, proposals.flatMap(parcelCandidates))
  return proposals.map((proposal) => checkedParcel(proposal, existing))
}
