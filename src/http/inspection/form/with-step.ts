import { COMPONENT_KINDS, type ComponentKind } from '../../../catalog/kinds.ts'
import type { FormFault } from '../../../words/form-faults.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { addedPart, stepsOf } from '../sheet/steps.ts'
import { type InspectionForm, type Typed, withPart } from './typed.ts'

/** Which names of what a browser sends are about the form and not about the inspection. */
const OWN: ReadonlySet<string> = new Set([
  'step',
  'to',
  'draft',
  'revision',
  'findings',
  'newKind',
  'newName',
  'newKey',
])

/** The answers among what was sent of a step; what is empty says nothing. */
export const answersIn = (sent: readonly (readonly [string, string])[]): Typed =>
  Object.fromEntries(
    sent.filter(([name, text]) => !OWN.has(name) && !name.startsWith('keep:') && text !== ''),
  )

/** A form with one step as it was sent. */
export function withStep(
  form: InspectionForm,
  sheet: Pick<InspectionSheet, 'parts'>,
  step: string,
  typed: Typed,
): InspectionForm {
  if (step === 'start') return { ...form, start: typed }
  if (step === 'review') return { ...form, notes: typed.notes ?? '' }
  const there = stepsOf(sheet, form).find(({ name }) => name === step)
  if (there?.is !== 'part') return form
  const { label, ...answers } = typed
  const name = there.recorded === null && label?.trim() ? label.trim() : there.part.label
  return withPart(form, { ...there.part, label: name, typed: answers })
}

export type Added = { readonly form: InspectionForm; readonly step: string } | { readonly fault: FormFault }

/** What is added under "not on record": of a kind, under a name, or one that the record took out of service. */
export function withAdded(form: InspectionForm, { former, parts }: InspectionSheet, typed: Typed): Added {
  const old = former.find(({ key }) => key === typed.newKey)
  const kind = (typed.newKind || old?.kind) as ComponentKind | undefined
  if (!kind || !COMPONENT_KINDS.includes(kind)) return { fault: { why: 'no-kind' } }
  // No two components of an inspection share a name, and those on record have theirs already.
  const taken = { ...form, parts: [...form.parts, ...parts.map((it) => ({ ...it, typed: {} }))] }
  const part = addedPart(taken, kind, typed.newName || (old?.label ?? ''), old?.key ?? null)
  return { form: withPart(form, part), step: part.id }
}
