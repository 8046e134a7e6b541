import type { PartialDate } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { Fields } from './field.ts'

/**
 * What a record holds of a field. `L` is how a length is held (as written, or as taken with a method), `V` a volume,
 * `T` whose words a text is; all else follows from the declaration.
 */
export type ValueOf<F, L, V, T = string> = F extends { value: 'length' | 'level' }
  ? L
  : F extends { value: 'volume' }
    ? V
    : F extends { value: 'whole' | 'number' }
      ? number
      : F extends { value: 'date' }
        ? PlainDate
        : F extends { value: 'partial-date' }
          ? PartialDate
          : F extends { value: 'flag' }
            ? boolean
            : F extends { value: 'line' | 'prose' }
              ? T
              : F extends { value: 'lines' }
                ? readonly string[]
                : F extends { value: 'choice'; choices: readonly (infer C)[] }
                  ? C
                  : F extends { value: 'choices'; choices: readonly (infer C)[] }
                    ? readonly C[]
                    : F extends { value: 'group'; parts: infer P }
                      ? RecordOf<P, L, V, T>
                      : F extends { value: 'rows'; parts: infer P }
                        ? readonly RecordOf<P, L, V, T>[]
                        : never

/** A record of fields: null where a field may be left out and was. */
export type RecordOf<Fs, L, V, T = string> = {
  readonly [N in keyof Fs]: ValueOf<Fs[N], L, V, T> | (IsAlways<Fs[N]> extends true ? never : null)
}

export type IsAlways<F> = F extends { needed: true } | { default: unknown } ? true : false

/** The fields that a permit, or an inspection, enters. */
export type EnteredBy<Fs, By extends 'permit' | 'inspection'> = {
  readonly [N in keyof Fs as Fs[N] extends { by: By | 'both' } ? N : never]: Fs[N]
}

export const enteredBy = <Fs extends Fields, By extends 'permit' | 'inspection'>(
  fields: Fs,
  by: By,
): EnteredBy<Fs, By> =>
  Object.fromEntries(
    Object.entries(fields).filter(([, field]) => field.by === by || field.by === 'both'),
  ) as EnteredBy<Fs, By>
