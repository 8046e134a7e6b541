import { err, type Result } from '../../base/result.ts'
import { MEASURE_NAMES, type MeasureName, SYSTEM_FIELDS, type SystemField } from '../../catalog/catalog.ts'
import { MEASURES } from '../../catalog/component-measures.ts'
import type { Field } from '../../catalog/field.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import { PERMIT_FIELDS } from '../../catalog/permit-fields.ts'
import { statedField } from './field-schema.ts'
import { type EntryIssue, pointerOf } from './issues.ts'
import { readEntry } from './read-entry.ts'
import { isMeasured, unusualOf } from './unusual.ts'

export const CORRECTABLE = [...SYSTEM_FIELDS, ...MEASURE_NAMES] as const
export type Correctable = SystemField | MeasureName

/** Values of the whole system belong to no component; every other field to one. */
export const belongsToComponent = (field: Correctable): field is MeasureName => field in MEASURES

/** Where the field stands in the catalog. */
export const correctableField = (field: Correctable) =>
  belongsToComponent(field) ? MEASURES[field] : PERMIT_FIELDS[field]

/**
 * The value of a correction, read as the permit's own entry would read it: a length as people write it for a length, a
 * number for a count. There is no correction to nothing: what a paper does not say is left out when it is entered.
 */
export function correctionValue(
  field: Correctable,
  value: unknown,
  at: readonly PropertyKey[],
  kind?: ComponentKind,
): Result<unknown, readonly EntryIssue[]> {
  const place = belongsToComponent(field) ? 'component' : 'permit'
  const declared: Field = correctableField(field)
  const read = readEntry(statedField(declared, `${place}.${field}`), value, at)
  const asked =
    read.ok && kind !== undefined && isMeasured(read.value) ? unusualOf(declared, read.value, kind) : null
  if (asked !== null) return err([{ pointer: pointerOf(at), message: asked.says }])
  if (!read.ok || read.value !== null) return read
  return err([{ pointer: pointerOf(at), message: 'is missing: write the value that the record should have' }])
}
