import { z } from 'zod'
import type { Result } from '../../base/result.ts'
import { type ParseIssue, withReadings } from '../../measure/parse/issue.ts'
import { parseLength, type StatedLength } from '../../measure/parse/length.ts'
import { parseVolume, type StatedVolume } from '../../measure/parse/volume.ts'
import { parseDate, parsePartialDate } from '../date.ts'
import { marked, unmarked } from './marked.ts'

/** Parses as zod validates, so that a fault carries the pointer of its field and all faults come back at once. */
const read =
  <T>(parse: (text: string) => Result<T, ParseIssue>) =>
  (text: string, context: z.core.$RefinementCtx): T => {
    const result = parse(text)
    if (result.ok) return result.value
    context.addIssue({ code: 'custom', message: withReadings(result.error), input: text })
    return z.NEVER
  }

const text = (example: string) =>
  z.string().trim().min(1, `write a value with its unit, for example ${example}`).max(60)

/** A millionth of a unit is below what any instrument tells; nearer to zero a number is a slip, and its decimals can't be counted. */
const LEAST = 1e-6
const positive = z
  .number()
  .nonnegative('not below zero')
  .max(100_000)
  .refine((value) => value === 0 || value >= LEAST, 'is nearer to zero than anything that is measured')

/** As it was read, and that a person says it is meant, where it stands beyond what is usual. */
const meant = <T extends { readonly asWritten: string }>(value: T, checked: boolean | undefined): T =>
  checked ? { ...value, asWritten: marked(value.asWritten) } : value

const readMeant =
  <T extends { readonly asWritten: string }>(parse: (text: string) => Result<T, ParseIssue>) =>
  (typed: string, context: z.core.$RefinementCtx): T => {
    const { text: written, checked } = unmarked(typed)
    return meant(read(parse)(written, context), checked)
  }

const checked = z.literal(true).optional()

/** A length: as people write it (`4'-6"`, `54 in`, `1.37 m`), or a number under the name of its unit. */
export const lengthEntry = z
  .union([
    text(`4'-6"`).transform(readMeant((written) => parseLength(written))),
    z
      .strictObject({ ft: positive, checked })
      .transform((it): StatedLength => meant(asNumber(it.ft, 1, 'ft'), it.checked)),
    z
      .strictObject({ in: positive, checked })
      .transform((it): StatedLength => meant(asNumber(it.in, 1 / 12, 'in'), it.checked)),
    z
      .strictObject({ m: positive, checked })
      .transform((it): StatedLength => meant(asNumber(it.m, 1 / 0.3048, 'm'), it.checked)),
  ])
  .meta({
    description:
      'A length as people write it: 4\'-6", 54 in, 4.5 ft, 1.37 m; or {ft}, {in} or {m}. One beyond what is usual is asked about: write "84 ft, checked" where it is right',
    examples: ['4\'-6"'],
  })

/** A volume: `1,000 gal`, `3785 L`, or `{gal}`. */
export const volumeEntry = z
  .union([
    text('1,000 gal').transform(readMeant((written) => parseVolume(written))),
    z
      .strictObject({ gal: positive, checked })
      .transform(
        ({ gal, checked }): StatedVolume =>
          meant({ gal, halfStepGal: halfStep(gal), asWritten: `${gal} gal` }, checked),
      ),
  ])
  .meta({
    description: 'A volume as people write it: 1,000 gal, 3785 L; or {gal}; 30,000 gal, checked',
    examples: ['1,000 gal'],
  })

/** A date: `YYYY-MM-DD`, or as a permit writes it (`5/3/74`, `May 3, 1974`). */
export const dateEntry = z
  .string()
  .transform(read((written) => corrected(parseDate(written))))
  .meta({
    description: 'A date: YYYY-MM-DD, 5/3/1974 (month first) or May 3, 1974',
    examples: ['1974-05-03'],
  })

/** A date as far as it is known: `1977-05-09`, `Sept. '77`, `9/77`, `1977`. */
export const partialDateEntry = z
  .string()
  .transform(read((written) => corrected(parsePartialDate(written))))
  .meta({
    description: 'A date as far as it is known: 1974-05-03, May 3, 1974, 9/77, Sept. 1977 or 1977',
    examples: ['1974-05-03', '1977-09', '1977'],
  })

const corrected = <T>(result: Result<T, string>): Result<T, ParseIssue> =>
  result.ok ? result : { ok: false, error: { message: result.error } }

/** Half of the last decimal place that a number shows. */
const halfStep = (value: number): number => 0.5 * 10 ** -(String(value).split('.')[1]?.length ?? 0)

const asNumber = (value: number, ftPerUnit: number, unit: string): StatedLength => ({
  ft: value * ftPerUnit,
  halfStepFt: halfStep(value) * ftPerUnit,
  asWritten: `${value} ${unit}`,
})
