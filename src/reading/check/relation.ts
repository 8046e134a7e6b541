/** Amounts at pointers: ft, gal, days, counts. */
export type Amounts = (pointer: string) => number | null

/** Something that holds among the values of a paper that was read right. */
export type Relation = {
  readonly kind: 'arithmetic' | 'out-of-range' | 'date-order'
  readonly pointers: readonly string[]
  /** Null where a value it needs is not there. */
  readonly holds: (amounts: Amounts) => boolean | null
  readonly says: string
}

/** A relation over amounts that must all be there. */
export const relation = (
  kind: Relation['kind'],
  pointers: readonly string[],
  says: string,
  holds: (...amounts: number[]) => boolean,
): Relation => ({
  kind,
  pointers,
  says,
  holds: (amounts) => {
    const values = pointers.map(amounts)
    return values.every((value) => value !== null) ? holds(...(values as number[])) : null
  },
})

export const range = (pointer: string, least: number, most: number, says: string): Relation =>
  relation('out-of-range', [pointer], says, (value) => value >= least && value <= most)
