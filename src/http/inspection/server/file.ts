import { createHash } from 'node:crypto'
import type { InspectionPrepared } from '../../../operations/findings/prepare-inspection.ts'
import type { RuleBook } from '../../../rules/book.ts'
import type { PlaceId } from '../../../rules/pack.ts'
import type { Person } from '../../../store/database/actor.ts'
import { inspectionRulesPath } from '../addresses.ts'
import type { InspectionFile } from '../file.ts'
import { formOnFile } from '../form/read.ts'
import { photoShown, sheetOf } from './show.ts'

/** The rules of one place as text, and their hash. The book is the same for as long as the process runs. */
export type PlaceRulesText = { readonly text: string; readonly hash: string }
const texts = new WeakMap<RuleBook, Map<PlaceId, PlaceRulesText>>()

export function rulesText(book: RuleBook, place: PlaceId): PlaceRulesText {
  const known = texts.get(book)?.get(place)
  if (known) return known
  const text = JSON.stringify({ place, standings: [...(book.places.get(place)?.standings ?? [])] })
  const hash = createHash('sha256').update(text).digest('hex').slice(0, 16)
  const made = { text, hash }
  texts.set(book, new Map([...(texts.get(book) ?? []), [place, made]]))
  return made
}

/** What the phone takes along besides its own pages. */
export function inspectionFile(
  prepared: InspectionPrepared,
  { account, organization, county }: Person,
): InspectionFile {
  const { input, draft, submitted, photos } = prepared
  const { book, ...given } = input
  const sheet = sheetOf(county, prepared)
  return {
    account,
    sheet,
    given: { ...given, firm: organization },
    rules: inspectionRulesPath(county, rulesText(book, input.county).hash),
    draft: draft && {
      id: draft.id,
      revision: draft.revision,
      form: formOnFile(draft.record, sheet.parts),
      changedAt: draft.changedAt.toISOString(),
      amends: draft.amends !== null,
    },
    submitted: submitted && { id: submitted.id, inspectedOn: submitted.record.inspectedOn },
    photos: photos.map((photo) => photoShown(county, photo)),
  }
}
