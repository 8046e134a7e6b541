import { z } from 'zod'
import { FOUND_FIELDS, type FoundFields } from '../../catalog/catalog.ts'
import { INSPECTION_FIELDS } from '../../catalog/inspection-fields.ts'
import type { FindingsRecord, FoundComponent } from '../../records/findings.ts'
import { acrossComponents, withSides } from './components.ts'
import type { EntryOf, FoundLengthTyped } from './entry-of.ts'
import { shapeOf } from './field-schema.ts'
import { faultsAlong } from './stretches.ts'
import { type Asked, issueOf } from './unusual.ts'
import { askAboutPart } from './unusual-parts.ts'

/** Findings as an inspector types them. */
export type FindingsEntry = EntryOf<typeof INSPECTION_FIELDS, FoundLengthTyped> & {
  components?: EntryOf<FoundFields, FoundLengthTyped>[] | undefined
}

/** What can only be seen by comparing fields of one component. Single fields may be at fault, so nothing is taken for granted. */
function acrossFields(found: Partial<FoundComponent> | undefined, context: z.core.$RefinementCtx): void {
  const fault = (field: string, it: string | Asked, ...deeper: readonly PropertyKey[]) =>
    context.addIssue({ ...issueOf(it), path: [field, ...deeper] })
  if (found?.outcome === 'not-found' && (found.searchedBy ?? []).length === 0) {
    fault('searchedBy', 'say how it was searched for; without a search it is "not-looked-for"')
  }
  if (found?.outcome === 'not-reached' && !found.notReachedBecause) {
    fault('notReachedBecause', 'say why it was not reached')
  }
  askAboutPart(found, FOUND_FIELDS, fault)
  faultsAlong(found, fault, 'inspection')
}

/** One component of the findings; its record lacks the sides that only the reference's wall tells. */
export const foundEntry = z
  .strictObject(shapeOf(FOUND_FIELDS, 'found', 'component'))
  .superRefine(acrossFields as (found: unknown, context: z.core.$RefinementCtx) => void, { when: () => true })

/** What the findings say of the day and of the whole system. */
export const inspectionEntry = z.strictObject(shapeOf(INSPECTION_FIELDS, 'found', 'inspection'))

/** The names that no two components of an inspection share. */
export const OWN_NAMES = ['label', 'key'] as const

/** The record of what was read by itself. */
export const findingsOf = (
  inspection: z.output<typeof inspectionEntry>,
  components: readonly z.output<typeof foundEntry>[],
): FindingsRecord => ({
  ...(inspection as Omit<FindingsRecord, 'components'>),
  components: withSides(components as readonly FoundComponent[], inspection.reference?.wall ?? null),
})

/** Parsing gives the record of `records/findings.ts`. */
export const findingsEntry: z.ZodType<FindingsRecord, FindingsEntry> = inspectionEntry
  .extend({ components: z.array(foundEntry).max(100).default([]) })
  .superRefine((entry, context) => acrossComponents(entry ?? {}, OWN_NAMES, context), { when: () => true })
  .transform(({ components, ...inspection }) => findingsOf(inspection, components)) as z.ZodType<
  FindingsRecord,
  FindingsEntry
>
