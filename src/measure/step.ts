/** One line of working that a reviewer can redo by hand: the formula in plain symbols, the same with numbers, the result. */
export type Step = {
  readonly says: string
  readonly formula: string
  readonly numbers: string
  readonly result: string
}

/** An answer and how it was reached. */
export type Worked<T> = { readonly value: T; readonly steps: readonly Step[] }

/**
 * An answer whose steps are written out when someone reads them, and then kept: thousands of capacities are computed
 * for every one whose working is printed. The steps stay an ordinary enumerable property.
 */
export function worked<T>(value: T, write: () => readonly Step[]): Worked<T> {
  let steps: readonly Step[] | undefined
  return {
    value,
    get steps() {
      steps ??= write()
      return steps
    },
  }
}
