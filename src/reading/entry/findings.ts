import { z } from 'zod'
import { FOUND_FIELDS, type FoundFields } from '../../catalog/catalog.ts'
import { INSPECTION_FIELDS } from '../../catalog/inspection-fields.ts'
import type { FindingsRecord, FoundComponent } from '../../records/findings.ts'
import { acrossComponents, withSides } from './components.ts'
import type { EntryOf, FoundLengthTyped } from './entry-of.ts'
import { shapeOf } from './field-schema.ts'

/** Findings as an inspector types them. */
export type FindingsEntry = EntryOf<typeof INSPECTION_FIELDS, FoundLengthTyped> & {
  components?: EntryOf<FoundFields, FoundLengthTyped>[] | undefined
}

type Typed = {
  readonly components?: readonly (Partial<FoundComponent> | undefined)[]
  readonly reference?: unknown
}

/** What can only be seen by comparing fields. Runs even where single fields are at fault, so takes nothing for granted. */
function acrossFields(entry: Typed, context: z.core.$RefinementCtx): void {
  const { components } = entry ?? {}
  if (!Array.isArray(components)) return
  components.forEach((found: Partial<FoundComponent> | undefined, index) => {
    const fault = (field: string, message: string) =>
      context.addIssue({ code: 'custom', path: ['components', index, field], message })
    if (found?.outcome === 'not-found' && (found.searchedBy ?? []).length === 0) {
      fault('searchedBy', 'say how it was searched for; without a search it is "not-looked-for"')
    }
    if (found?.outcome === 'not-reached' && !found.notReachedBecause) {
      fault('notReachedBecause', 'say why it was not reached')
    }
  })
  acrossComponents(entry, ['label', 'key'], context)
}

/** Parsing gives the record of `records/findings.ts`. */
export const findingsEntry: z.ZodType<FindingsRecord, FindingsEntry> = z
  .strictObject({
    ...shapeOf(INSPECTION_FIELDS, 'found', 'inspection'),
    components: z
      .array(z.strictObject(shapeOf(FOUND_FIELDS, 'found', 'component')))
      .max(100)
      .default([]),
  })
  .superRefine(acrossFields, { when: () => true })
  .transform((entry) => ({
    ...entry,
    components: withSides(entry.components, entry.reference?.wall ?? null),
  })) as z.ZodType<FindingsRecord, FindingsEntry>
