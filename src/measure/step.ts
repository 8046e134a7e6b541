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
 * for every one whose working is printed. To whoever holds it the steps are an ordinary property, copied, compared
 * and sent like any other.
 */
export const worked = <T>(value: T, write: () => readonly Step[]): Worked<T> =>
  new WrittenWhenRead(value, write)

class WrittenWhenRead<T> implements Worked<T> {
  readonly value: T
  declare readonly steps: readonly Step[]
  #steps: readonly Step[] | (() => readonly Step[])

  constructor(value: T, write: () => readonly Step[]) {
    this.value = value
    this.#steps = write
    // One descriptor for all: a getter written in an object literal is a new one, and slow, for every answer.
    Object.defineProperty(this, 'steps', WrittenWhenRead.#reading)
  }

  static readonly #reading: PropertyDescriptor & ThisType<WrittenWhenRead<unknown>> = {
    enumerable: true,
    get() {
      if (typeof this.#steps === 'function') this.#steps = this.#steps()
      return this.#steps
    },
  }
}
