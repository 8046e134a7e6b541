import { canonicalText as textOf } from '../base/canonical.ts'
import type { RuleBook } from './book.ts'
import type { PlaceId } from './pack.ts'

/**
 * Rules as one text that is the same for the same rules, whatever order the files were read in (RFC 8785): what is
 * hashed to say by which rules a reconciliation was made. The hashing is done above the fire line. With a place, only
 * the packs in its reach, so that another county's new table does not look like a change here.
 */
export function canonicalText(book: RuleBook, place: PlaceId | null = null): string {
  const layers = place === null ? null : (book.places.get(place)?.layers ?? [])
  const packs = layers === null ? [...book.packs.values()] : [...new Set(layers.map(({ pack }) => pack))]
  return textOf(packs.sort((a, b) => (a.pack < b.pack ? -1 : 1)))
}
