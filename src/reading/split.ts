import { choose, sameValue } from './assemble/choose.ts'
import type { PageReadings } from './statement.ts'

/** What one page says of one permit. */
export type PageSaid = { readonly page: number; readonly readings: PageReadings }

/**
 * Which readings make one permit. What gives another permit number, or another parcel, than what came before begins the
 * next; what gives neither goes on with the permit before. Two permits of one page are two, whatever they give.
 */
export function splitIntoPermits<T extends PageSaid>(said: readonly T[]): readonly (readonly T[])[] {
  const permits: { readonly parts: T[]; number: Known; parcel: Known }[] = []
  for (const one of said) {
    const number = sure(one, 'number')
    const parcel = sure(one, 'parcelNumber')
    const current = permits.at(-1)
    const differs = (own: Known, known: Known): boolean =>
      own !== undefined && known !== undefined && !sameValue(own, known)
    const isOtherOfPage =
      current?.parts.some(({ page }) => page === one.page) && !sameNumber(current.number, number)
    if (!current || isOtherOfPage || differs(number, current.number) || differs(parcel, current.parcel))
      permits.push({ parts: [one], number, parcel })
    else {
      current.parts.push(one)
      current.number ??= number
      current.parcel ??= parcel
    }
  }
  return permits.map(({ parts }) => parts)
}

type Known = string | number | undefined
const sameNumber = (a: Known, b: Known): boolean => a !== undefined && b !== undefined && sameValue(a, b)

/** Only a well-labeled number cuts: a stray one on a continuation sheet must not. */
const SURE = 0.8
function sure({ readings }: PageSaid, ask: 'number' | 'parcelNumber'): Known {
  const chosen = choose(
    readings.statements.filter((statement) => statement.ask === ask && statement.fit >= SURE),
  )
  return chosen?.statement.value
}
