import type { z } from 'zod'
import { err, ok, type Result } from '../../base/result.ts'
import { SYSTEM_FIELDS, type SystemField } from '../../records/as-built.ts'
import { MEASURE_NAMES, type MeasureName } from '../../records/component.ts'
import { type EntryIssue, entryIssues } from './issues.ts'
import { measureEntries } from './measures.ts'
import { permitEntry } from './permit.ts'
import { lengthEntry } from './quantity.ts'

export const CORRECTABLE = [...SYSTEM_FIELDS, ...MEASURE_NAMES] as const
export type Correctable = SystemField | MeasureName

const measures = measureEntries(lengthEntry)
const isSystem = (field: Correctable): field is SystemField =>
  (SYSTEM_FIELDS as readonly string[]).includes(field)

/**
 * The value of a correction, read as the permit's own entry would read it: a length as people write it for a length, a
 * number for a count. There is no correction to nothing: what a paper does not say is left out when it is entered.
 */
export function correctionValue(
  field: Correctable,
  value: unknown,
  at: readonly PropertyKey[],
): Result<unknown, readonly EntryIssue[]> {
  const schema: z.ZodType = isSystem(field) ? permitEntry.in.shape[field] : measures[field]
  const parsed = schema.safeParse(value)
  if (!parsed.success) return err(entryIssues(parsed.error, at))
  if (parsed.data !== null) return ok(parsed.data)
  const pointer = at.map((key) => `/${String(key)}`).join('')
  return err([{ pointer, message: 'is missing: write the value that the record should have' }])
}

/** Values of the whole system belong to no component; every other field to one. */
export const belongsToComponent = (field: Correctable): boolean => !isSystem(field)
