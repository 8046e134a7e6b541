import type { ParcelMatch } from '../../../store/parcels.ts'

export type Hit = {
  readonly number: string
  readonly address: string | null
  readonly retiredOn: string | null
  /** Why it is here, where that is not plain to see. */
  readonly because: string | null
}

/** How sure it is that a parcel is the one asked for; `address-like`: the house is right and the street misspelled. */
type By = ParcelMatch['matched'] | 'address-like'

/** Where a search leads: straight to a parcel, or to a page with what there is. */
export type Found =
  | { readonly to: 'parcel'; readonly number: string; readonly by: By }
  | { readonly to: 'list'; readonly hits: readonly Hit[]; readonly by: By }
  | { readonly to: 'nothing' }

export function presentFound(matches: readonly ParcelMatch[]): Found {
  const [first, ...others] = matches
  if (!first) return { to: 'nothing' }
  const bearing = matches.filter(({ matched }) => matched === 'number')
  // Another house of the street is no answer, even where it is the only one.
  const alone = others.length === 0 && first.matched !== 'street' ? first : undefined
  const only = bearing.length === 1 ? bearing[0] : alone
  if (only) return { to: 'parcel', number: only.parcel.number, by: byOf(only) }
  return { to: 'list', hits: matches.map(hit), by: byOf(first) }
}

const byOf = ({ matched, score }: ParcelMatch): By =>
  matched === 'address' && score < 1 ? 'address-like' : matched

const hit = ({ parcel: { number, address, retiredOn }, matched, says }: ParcelMatch): Hit => ({
  number,
  address,
  retiredOn,
  because: matched === 'old-number' ? `old number ${says}` : null,
})

/** How a search that was not for the number itself led to a parcel, said on its page. */
export function cameBy(asked: string, by: string): string | null {
  switch (by) {
    case 'old-number':
      return `You asked for ${asked}: that is an old number of this parcel.`
    case 'number-begins':
      return `You asked for ${asked}: this is the only parcel whose number begins so.`
    case 'address':
      return `You asked for “${asked}”: this is the only address that has it.`
    case 'address-like':
      return `No street is spelled as in “${asked}”. This is the only address like it: make sure that it is the one you mean.`
    default:
      return null
  }
}

/** What heads a list, so that nobody takes a neighbor for the parcel they asked for. */
export function listTitle(asked: string, by: By): string {
  if (by === 'number' || by === 'old-number') return `Which of these is ${asked}?`
  if (by === 'street' && /\d/.test(asked)) return `There is no “${asked}”. The nearest houses:`
  return `Parcels like “${asked}”`
}
