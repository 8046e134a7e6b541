import { choose, sameValue } from './assemble/choose.ts'
import type { PageReadings } from './statement.ts'

export type PageSaid = { readonly page: number; readonly readings: PageReadings }

/**
 * Which pages make one permit: a page that gives another permit number, or another parcel, than the pages before it
 * begins the next; a page that gives neither goes on with the permit before.
 */
export function splitIntoPermits<T extends PageSaid>(pages: readonly T[]): readonly (readonly T[])[] {
  const permits: T[][] = []
  let current: { number: string | number | undefined; parcel: string | number | undefined } | undefined
  for (const said of pages) {
    const number = sure(said, 'number')
    const parcel = sure(said, 'parcelNumber')
    const differs = (own: string | number | undefined, known: string | number | undefined): boolean =>
      own !== undefined && known !== undefined && !sameValue(own, known)
    const begins = !current || differs(number, current.number) || differs(parcel, current.parcel)
    if (begins) {
      permits.push([said])
      current = { number, parcel }
    } else {
      permits.at(-1)!.push(said)
      current = { number: current!.number ?? number, parcel: current!.parcel ?? parcel }
    }
  }
  return permits
}

/** Only a well-labeled number cuts: a stray one on a continuation sheet must not. */
const SURE = 0.8
function sure({ readings }: PageSaid, ask: 'number' | 'parcelNumber'): string | number | undefined {
  const chosen = choose(
    readings.statements.filter((statement) => statement.ask === ask && statement.fit >= SURE),
  )
  return chosen?.statement.value
}
