/** One line of working that a reviewer can redo by hand: the formula in plain symbols, the same with numbers, the result. */
export type Step = {
  readonly says: string
  readonly formula: string
  readonly numbers: string
  readonly result: string
}

/** An answer and how it was reached. */
export type Worked<T> = { readonly value: T; readonly steps: readonly Step[] }
