import type { System } from '../../records/system.ts'

/** Between a parcel's number and what tells one of its systems, in an address: no parcel number has it. */
const SIGN = '~'

/** A parcel as it is asked for, apart from which of its systems. */
export function apart(asked: string): { readonly parcel: string; readonly system: string | null } {
  const [parcel, system] = asked.split(SIGN) as [string, string?]
  return { parcel, system: system ?? null }
}

/** Named by the end of its id, which nobody has to read; a parcel with one system by its number alone. */
export const addressOf = (number: string, { id }: Pick<System, 'id'>, among: readonly unknown[]): string =>
  among.length > 1 ? `${number}${SIGN}${id.slice(-TELLING)}` : number

const TELLING = 6

/** Of what lies with a system, where nothing tells how many the parcel has: named unless it is the parcel's own. */
export const filedAt = (
  number: string,
  { system, parcel }: { readonly system: string; readonly parcel: string },
): string => (system === parcel ? number : addressOf(number, { id: system }, [system, parcel]))

/** By its id, or by the end of it as an address has it. */
export const isNamed = ({ id }: Pick<System, 'id'>, asked: string): boolean =>
  id === asked || (asked.length === TELLING && id.endsWith(asked))
