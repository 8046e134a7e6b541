import type { PlainDate } from '../../base/plain-date.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { readStories } from '../demonstration/read-stories.ts'
import type { ParcelFile } from '../demonstration/story.ts'

/** A question to put to two versions: everything but the rules, which each brings itself. */
export type Question = { readonly name: string; readonly input: Omit<ReconcileInput, 'book'> }

/** Every story of the demonstration, on the day it ends and on each earlier day it tells of. */
export const storyQuestions = (): readonly Question[] =>
  readStories().flatMap(({ slug, asOf, parcels }) =>
    parcels.flatMap((file) =>
      [...file.earlier.map(({ on }) => on), asOf].map((on) => ({
        name: `${slug}, ${file.parcel.number}, ${on}`,
        input: inputOn(file, on),
      })),
    ),
  )

/** What had come in by that day. A permit's number serves as its id, as in the keys that stories write. */
function inputOn(file: ParcelFile, asOf: PlainDate): Question['input'] {
  const inspections = file.findings.filter(({ submittedOn }) => submittedOn <= asOf)
  const inspection = inspections.at(-1)
  return {
    county: 'quillback',
    asOf,
    permits: file.permits
      .filter(({ enteredOn }) => enteredOn === undefined || enteredOn <= asOf)
      .map(({ record, enteredOn }) => ({
        id: record.number,
        revision: 1,
        record,
        sources: { '': { kind: 'typed', by: 'records clerk', on: enteredOn ?? '2025-09-01' } },
      })),
    corrections: file.decisions.flatMap(({ on, corrects }, index) => {
      if (!corrects || on > asOf) return []
      const { permit, component, field, value } = corrects
      const key = component === undefined ? null : `${permit}/${component}`
      return [{ decision: `decision ${index + 1}`, on, by: 'reviewer', permit, component: key, field, value }]
    }),
    ...(file.given ? { system: file.given } : {}),
    findings: inspection
      ? {
          id: `inspection ${inspections.length}`,
          firm: inspection.firm,
          submittedOn: inspection.submittedOn,
          record: inspection.record,
        }
      : null,
  }
}
