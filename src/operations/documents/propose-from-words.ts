import { invariant } from '../../base/invariant.ts'
import { type ProposedTexts, proposeInChild } from '../../scan/propose-in-child.ts'
import { talliesOf } from '../../store/confirmations.ts'
import { countyById } from '../../store/counties.ts'
import { type Actor, asService } from '../../store/database/actor.ts'
import type { Database } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { wordsAsText } from '../../store/document-pages.ts'
import { numbersAmong } from '../../store/parcels.ts'
import { formsInForce } from '../../store/taught-forms.ts'

/**
 * What the pages of a paper that was read seem to say, by labels and by the county's forms in force, each permit held
 * against the parcels that there are. `cuts`: the pages of each permit where somebody has said so, else by what they say.
 * Takes as long as the paper is long: call it outside any transaction.
 */
export async function proposeFromWords(
  database: Database,
  actor: Actor,
  document: string,
  cuts: readonly (readonly number[])[] | null,
  signal?: AbortSignal,
): Promise<ProposedTexts> {
  const service = asService(actor)
  const { county } = actor
  const { format, forms, tallies } = await transact(database, service, async (tx) => {
    const served = await countyById(tx, county)
    invariant(served, `a document of ${county}, which is no county`)
    return {
      format: served.parcelFormat,
      forms: await formsInForce(tx, county),
      tallies: await talliesOf(tx, county),
    }
  })
  async function* pages() {
    for (let after = 0; ; ) {
      const some = await transact(database, service, (tx) => wordsAsText(tx, county, document, after))
      yield* some
      const last = some.at(-1)
      if (!last) return
      after = last.number
    }
  }
  const among = (numbers: readonly string[]) =>
    transact(database, service, (tx) => numbersAmong(tx, county, numbers))
  return proposeInChild({ county, format, forms, tallies, cuts, pages, numbersAmong: among, signal })
}

/** What a person is told of pages of which nothing could be proposed; null where there are none. */
export function sayLeftOut({ leftOut, gaveUp }: ProposedTexts): string | null {
  if (gaveUp)
    return 'Reading this document took more time or memory than allowed. Type what it says, or split the file.'
  if (leftOut.length === 0) return null
  const which = leftOut.length === 1 ? `page ${leftOut[0]}` : `pages ${leftOut.join(', ')}`
  return `Reading ${which} took more time or memory than allowed. Type what it says.`
}
