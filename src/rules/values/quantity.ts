import { z } from 'zod'

/** A number fixed by rule, with the unit it is written in. */
export type Quantity<Unit extends string> = { readonly amount: number; readonly unit: Unit }

/** The pack must write the unit out, and it must be the one the register names: nothing is converted silently. */
export const quantity = <const Unit extends string>(unit: Unit): z.ZodType<Quantity<Unit>> =>
  z.strictObject({ amount: z.number(), unit: z.literal(unit) }) as never

/** A band with open or closed ends; an end left out is unbounded. */
export type Range<Unit extends string> = {
  readonly unit: Unit
  readonly atLeast: number | null
  readonly moreThan: number | null
  readonly atMost: number | null
  readonly lessThan: number | null
}

const end = z
  .number()
  .nullish()
  .transform((value) => value ?? null)

const bounds = { atLeast: end, moreThan: end, atMost: end, lessThan: end }

export const range = <const Unit extends string>(unit: Unit): z.ZodType<Range<Unit>> =>
  z
    .strictObject({ unit: z.literal(unit), ...bounds })
    .refine((it) => [it.atLeast, it.moreThan, it.atMost, it.lessThan].some((value) => value !== null), {
      error: 'a range needs at least one of at-least, more-than, at-most, less-than',
    })
    .refine((it) => it.atLeast === null || it.moreThan === null, {
      error: 'write either at-least or more-than, not both',
    })
    .refine((it) => it.atMost === null || it.lessThan === null, {
      error: 'write either at-most or less-than, not both',
    })
    .refine((it) => lowEnd(it) <= highEnd(it), { error: 'the low end lies above the high end' }) as never

type Bounds = Omit<Range<string>, 'unit'>
export const lowEnd = (it: Bounds): number => it.atLeast ?? it.moreThan ?? Number.NEGATIVE_INFINITY
export const highEnd = (it: Bounds): number => it.atMost ?? it.lessThan ?? Number.POSITIVE_INFINITY

export const within = (it: Bounds, value: number): boolean =>
  (it.atLeast === null || value >= it.atLeast) &&
  (it.moreThan === null || value > it.moreThan) &&
  (it.atMost === null || value <= it.atMost) &&
  (it.lessThan === null || value < it.lessThan)

/** "at least 6 and at most 8 in", the way a rule reads. */
export function rangeInWords(it: Range<string>): string {
  const ends = [
    it.atLeast !== null ? `at least ${it.atLeast}` : it.moreThan !== null ? `more than ${it.moreThan}` : null,
    it.atMost !== null ? `at most ${it.atMost}` : it.lessThan !== null ? `less than ${it.lessThan}` : null,
  ]
  return `${ends.filter((part) => part !== null).join(' and ')} ${it.unit}`
}
