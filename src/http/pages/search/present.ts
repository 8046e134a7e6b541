import type { ParcelMatch } from '../../../store/parcels.ts'
import { type Copy, inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'

export type Hit = {
  readonly number: string
  readonly address: string | null
  readonly retiredOn: string | null
  /** Why it is listed, where that is not obvious. */
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
export function cameBy(asked: string, by: string, language: Language): string | null {
  const words = inLanguage(CAME_BY, language)
  switch (by) {
    case 'old-number':
      return words.oldNumber(asked)
    case 'number-begins':
      return words.numberBegins(asked)
    case 'address':
      return words.address(asked)
    case 'address-like':
      return words.addressLike(asked)
    default:
      return null
  }
}

const CAME_BY = {
  oldNumber: {
    en: (asked: string) => `${asked} is an old number of this parcel.`,
    es: (asked: string) => `${asked} es un número anterior de esta parcela.`,
  },
  numberBegins: {
    en: (asked: string) => `This is the only parcel whose number starts with ${asked}.`,
    es: (asked: string) => `Esta es la única parcela cuyo número empieza con ${asked}.`,
  },
  address: {
    en: (asked: string) => `This is the only address that matches “${asked}”.`,
    es: (asked: string) => `Esta es la única dirección que coincide con «${asked}».`,
  },
  addressLike: {
    en: (asked: string) =>
      `No street is spelled “${asked}”. This is the closest address. Make sure it is the one you mean.`,
    es: (asked: string) =>
      `Ninguna calle se escribe «${asked}». Esta es la dirección más parecida. Asegúrese de que es la que busca.`,
  },
} satisfies Copy

/** The title of a list, so that nobody mistakes a neighbor for the parcel they asked for. */
export function listTitle(asked: string, by: By): string {
  if (by === 'number' || by === 'old-number') return `Which of these is ${asked}?`
  if (by === 'street' && /\d/.test(asked)) return `There is no “${asked}”. The nearest addresses:`
  return `Parcels that match “${asked}”`
}
