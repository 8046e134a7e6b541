import { z } from 'zod'
import type { Result } from '../../base/result.ts'
import type { ParseIssue } from '../../measure/parse/issue.ts'
import { parseLength, type StatedLength } from '../../measure/parse/length.ts'
import { parseVolume, type StatedVolume } from '../../measure/parse/volume.ts'
import { parseDate } from '../date.ts'

const said = ({ message, readings }: ParseIssue): string =>
  readings?.length ? `${message}. It could be ${readings.join(' or ')}` : message

/** Parses as zod validates, so that a fault carries the pointer of its field and all faults come back at once. */
const read =
  <T>(parse: (text: string) => Result<T, ParseIssue>) =>
  (text: string, context: z.core.$RefinementCtx): T => {
    const result = parse(text)
    if (result.ok) return result.value
    context.addIssue({ code: 'custom', message: said(result.error), input: text })
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

/** A length: as people write it (`4'-6"`, `54 in`, `1.37 m`), or a number under the name of its unit. */
export const lengthEntry = z
  .union([
    text(`4'-6"`).transform(read((written) => parseLength(written))),
    z.strictObject({ ft: positive }).transform(({ ft }): StatedLength => asNumber(ft, 1, 'ft')),
    z.strictObject({ in: positive }).transform((entry): StatedLength => asNumber(entry.in, 1 / 12, 'in')),
    z.strictObject({ m: positive }).transform(({ m }): StatedLength => asNumber(m, 1 / 0.3048, 'm')),
  ])
  .meta({
    description: 'A length as people write it: 4\'-6", 54 in, 4.5 ft, 1.37 m; or {ft}, {in} or {m}',
    examples: ['4\'-6"'],
  })

/** A volume: `1,000 gal`, `3785 L`, or `{gal}`. */
export const volumeEntry = z
  .union([
    text('1,000 gal').transform(read((written) => parseVolume(written))),
    z
      .strictObject({ gal: positive })
      .transform(({ gal }): StatedVolume => ({ gal, halfStepGal: halfStep(gal), asWritten: `${gal} gal` })),
  ])
  .meta({ description: 'A volume as people write it: 1,000 gal, 3785 L; or {gal}', examples: ['1,000 gal'] })

/** A date: `YYYY-MM-DD`, or as a permit writes it (`5/3/74`, `May 3, 1974`). */
export const dateEntry = z
  .string()
  .transform(read((written) => mended(parseDate(written))))
  .meta({
    description: 'A date: YYYY-MM-DD, 5/3/1974 (month first) or May 3, 1974',
    examples: ['1974-05-03'],
  })

const mended = <T>(result: Result<T, string>): Result<T, ParseIssue> =>
  result.ok ? result : { ok: false, error: { message: result.error } }

/** Half of the last decimal place that a number shows. */
const halfStep = (value: number): number => 0.5 * 10 ** -(String(value).split('.')[1]?.length ?? 0)

const asNumber = (value: number, ftPerUnit: number, unit: string): StatedLength => ({
  ft: value * ftPerUnit,
  halfStepFt: halfStep(value) * ftPerUnit,
  asWritten: `${value} ${unit}`,
})
