/** A list that holds at least one element. */
export type NonEmpty<T> = readonly [T, ...T[]]

export const isNonEmpty = <T>(list: readonly T[]): list is NonEmpty<T> => list.length > 0
