import type { FindingsRecord } from '../../../records/findings.ts'
import { questionOf } from './questions.ts'
import { type Faults, type ReadForm, readForm } from './read.ts'
import type { InspectionForm, Typed } from './typed.ts'

/**
 * What a form says as far as it can be read: a field with a fault counts as empty, a component that then still has one
 * is left out. So that a number half typed does not take away what the others come to. Null where not even the rest
 * can be read.
 */
export function readableRecord(form: InspectionForm, { record, faults }: ReadForm): FindingsRecord | null {
  if (record) return record
  const fields: InspectionForm = {
    start: without(form.start, faults.start),
    parts: form.parts.map((part) =>
      faults[part.id] ? { ...part, typed: without(part.typed, faults[part.id]) } : part,
    ),
    notes: faults.review ? '' : form.notes,
  }
  const again = readForm(fields)
  if (again.record) return again.record
  return readForm({ ...fields, parts: fields.parts.filter(({ id }) => again.faults[id] === undefined) })
    .record
}

function without(typed: Typed, faults: Faults[string] | undefined): Typed {
  if (!faults) return typed
  const faulty = new Set(Object.keys(faults).map(questionOf))
  return Object.fromEntries(Object.entries(typed).filter(([field]) => !faulty.has(questionOf(field))))
}
