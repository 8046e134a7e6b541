import { z } from 'zod'
import { firstDay, lastDay, type PartialDate, partialDate } from '../../base/partial-date.ts'
import { STATED_FIELDS, type StatedFields } from '../../catalog/catalog.ts'
import { PERMIT_FIELDS } from '../../catalog/permit-fields.ts'
import type { PermitRecord } from '../../records/permit.ts'
import { acrossComponents, withSides } from './components.ts'
import type { EntryOf, LengthTyped } from './entry-of.ts'
import { shapeOf } from './field-schema.ts'
import { line } from './fields.ts'
import { faultsAlong } from './stretches.ts'
import { type Asked, issueOf } from './unusual.ts'
import { askAboutPart } from './unusual-parts.ts'

/** A permit as a person types it. */
export type PermitEntry = EntryOf<typeof PERMIT_FIELDS, LengthTyped> & {
  components?: EntryOf<StatedFields, LengthTyped>[] | undefined
  unreadable?: { pointer: string; note: string }[] | undefined
}

/** What could not be read stands there as it was typed. */
const isDate = (value: PartialDate | null | undefined): value is PartialDate =>
  typeof value === 'string' && partialDate(value).ok

/** What can only be seen by comparing fields. Runs even where single fields are at fault, so takes nothing for granted. */
function acrossFields(entry: Partial<PermitRecord>, context: z.core.$RefinementCtx): void {
  const { issuedOn, approvedOn } = entry ?? {}
  if (isDate(issuedOn) && isDate(approvedOn) && lastDay(approvedOn) < firstDay(issuedOn)) {
    context.addIssue({
      code: 'custom',
      path: ['approvedOn'],
      message: `approved on ${approvedOn}, before it was issued on ${issuedOn}: check both dates`,
    })
  }
  acrossComponents(entry ?? {}, ['tag'], context)
}

const statedEntry = z.strictObject(shapeOf(STATED_FIELDS, 'stated', 'component')).superRefine(
  (it: unknown, context) => {
    const part = it as { readonly [name: string]: unknown } | undefined
    const fault = (field: string, asked: string | Asked, ...deeper: readonly PropertyKey[]) =>
      context.addIssue({ ...issueOf(asked), path: [field, ...deeper] })
    askAboutPart(part, STATED_FIELDS, fault)
    faultsAlong(part, fault, 'permit')
  },
  { when: () => true },
)

const unreadable = z.strictObject({
  pointer: line(200).regex(/^(\/[^/]+)+$/, 'a JSON Pointer such as /bedrooms'),
  note: line(300),
})

/** Parsing gives the record of `records/permit.ts`; every fault comes back at once. */
export const permitEntry: z.ZodType<PermitRecord, PermitEntry> = z
  .strictObject({
    ...shapeOf(PERMIT_FIELDS, 'stated', 'permit'),
    components: z.array(statedEntry).max(100).default([]),
    unreadable: z.array(unreadable).max(100).default([]),
  })
  .superRefine(acrossFields, { when: () => true })
  .transform((entry) => ({
    ...entry,
    components: withSides(entry.components, entry.reference?.wall ?? null),
  })) as z.ZodType<PermitRecord, PermitEntry>
