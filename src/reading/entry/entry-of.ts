import type { z } from 'zod'
import type { IsAlways, RecordOf, ValueOf } from '../../catalog/value-of.ts'
import type { Method } from '../../measure/methods.ts'
import type { StatedVolume } from '../../measure/parse/volume.ts'
import type { lengthEntry, volumeEntry } from './quantity.ts'

/** A length as it is typed: of a paper, or in the field with how it was taken. */
export type LengthTyped = z.input<typeof lengthEntry>
export type FoundLengthTyped =
  | LengthTyped
  | {
      readonly length: LengthTyped
      readonly method?: Method | undefined
      readonly instrument?: string | undefined
    }

type LevelTyped = {
  readonly above?: LengthTyped | undefined
  readonly below?: LengthTyped | undefined
  readonly method?: Method | undefined
}

/** What a person types for a field; `L` is how a length is typed. */
export type EntryValue<F, L> = F extends { value: 'length' }
  ? L
  : F extends { value: 'level' }
    ? LevelTyped
    : F extends { value: 'volume' }
      ? z.input<typeof volumeEntry>
      : F extends { value: 'date' | 'partial-date' }
        ? string
        : F extends { value: 'whole' | 'number' }
          ? number | string
          : F extends { value: 'lines' | 'choices' }
            ? ValueOf<F, L, never>[number][]
            : F extends { value: 'group'; parts: infer P }
              ? EntryOf<P, L>
              : F extends { value: 'rows'; parts: infer P }
                ? EntryOf<P, L>[]
                : ValueOf<F, L, never>

type NeededIn<Fs> = { [N in keyof Fs]: Fs[N] extends { needed: true } ? N : never }[keyof Fs]

/** A record as it is typed: what may be left out may be null as well. */
export type EntryOf<Fs, L> = { [N in NeededIn<Fs>]: EntryValue<Fs[N], L> } & {
  [N in Exclude<keyof Fs, NeededIn<Fs>>]?:
    | EntryValue<Fs[N], L>
    | (IsAlways<Fs[N]> extends true ? undefined : null | undefined)
}

/** The schemas of fields: what each takes, and what it gives to the record. */
export type ShapeOf<Fs, LIn, LOut> = {
  readonly [N in keyof Fs]: z.ZodType<
    RecordOf<Fs, LOut, StatedVolume>[N],
    EntryValue<Fs[N], LIn> | null | undefined
  >
}
