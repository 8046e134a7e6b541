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
  const fields = withoutFields(form, faults)
  const again = readForm(fields)
  if (again.record) return again.record
  return readForm({ ...fields, parts: fields.parts.filter(({ id }) => again.faults[id] === undefined) })
    .record
}

function withoutFields(form: InspectionForm, faults: Faults): InspectionForm {
  const kept = (typed: Typed, step: string): Typed => {
    const faulty = new Set(Object.keys(faults[step] ?? {}).map(questionOf))
    return Object.fromEntries(Object.entries(typed).filter(([field]) => !faulty.has(questionOf(field))))
  }
  return {
    start: kept(form.start, 'start'),
    parts: form.parts.map((part) => ({ ...part, typed: kept(part.typed, part.id) })),
    notes: faults.review ? '' : form.notes,
  }
}
