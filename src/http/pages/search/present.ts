import type { ParcelMatch } from '../../../store/parcels.ts'

export type Hit = {
  readonly number: string
  readonly address: string | null
  readonly retiredOn: string | null
  /** Why it is here, where that is not plain to see. */
  readonly because: string | null
}

/** Where a search leads: straight to a parcel, or to a page with what there is. */
export type Found =
  | { readonly to: 'parcel'; readonly number: string; readonly by: ParcelMatch['matched'] }
  | { readonly to: 'list'; readonly hits: readonly Hit[]; readonly sure: boolean }
  | { readonly to: 'nothing' }

const SURE: readonly ParcelMatch['matched'][] = ['number', 'old-number']

export function presentFound(matches: readonly ParcelMatch[]): Found {
  const [first, ...others] = matches
  if (!first) return { to: 'nothing' }
  const bearing = matches.filter(({ matched }) => matched === 'number')
  const only = bearing.length === 1 ? bearing[0] : others.length === 0 ? first : undefined
  if (only) return { to: 'parcel', number: only.parcel.number, by: only.matched }
  return { to: 'list', hits: matches.map(hit), sure: SURE.includes(first.matched) }
}

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
    case 'street':
      return `There is no “${asked}”. This is the only address of that street: make sure that it is the one you mean.`
    default:
      return null
  }
}
