import type { Fields } from './field.ts'
import type { RecordOf } from './value-of.ts'

type NotNeeded<Fs> = { readonly [N in keyof Fs as Fs[N] extends { needed: true } ? never : N]: Fs[N] }

/** What a record holds where nobody entered anything: the fields that may be left out, each as it is then. */
export const blankOf = <Fs extends Fields>(fields: Fs): RecordOf<NotNeeded<Fs>, never, never> =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([name, field]) =>
      field.needed ? [] : [[name, 'default' in field ? field.default : null]],
    ),
  ) as RecordOf<NotNeeded<Fs>, never, never>
