import type { ComponentKind } from '../../../catalog/kinds.ts'
import { capital } from '../../pages/words/plain.ts'
import { filled, type InspectionForm, type PartForm } from '../form/typed.ts'
import type { InspectionSheet, SheetPart } from './sheet.ts'

/** The steps that are no component's. */
export const OWN_STEPS = ['start', 'more', 'review', 'sent'] as const

export type PartStep = {
  readonly is: 'part'
  readonly name: string
  readonly title: string
  readonly part: PartForm
  /** What the record has of it; null for a thing that is not on record. */
  readonly recorded: SheetPart | null
}
export type Step =
  | { readonly is: 'start' | 'more' | 'review'; readonly name: string; readonly title: string }
  | PartStep

/** The walk: what is asked once, each component on record from the house outward, what was added, the rest, the look back. */
export function stepsOf(sheet: Pick<InspectionSheet, 'parts'>, form: InspectionForm): readonly Step[] {
  const recorded = sheet.parts.map((it) =>
    partStep(form.parts.find(({ id }) => id === it.id) ?? blankPart(it), it),
  )
  const others = form.parts.filter(({ id }) => !sheet.parts.some((it) => it.id === id))
  return [
    { is: 'start', name: 'start', title: 'Before you begin' },
    ...recorded,
    ...others.map((part) => partStep(part, null)),
    { is: 'more', name: 'more', title: 'Not on record' },
    { is: 'review', name: 'review', title: 'Review and submit' },
  ]
}

const partStep = (part: PartForm, recorded: SheetPart | null): PartStep => ({
  is: 'part',
  name: part.id,
  title: capital(part.label),
  part,
  recorded,
})

export const blankPart = ({
  id,
  key,
  kind,
  label,
}: Pick<SheetPart, 'id' | 'key' | 'kind' | 'label'>): PartForm => ({
  id,
  key,
  kind,
  label,
  typed: {},
})

/** A form with nothing found yet: the day, and the corners on record that its ties will run from again. */
export const blankForm = (
  { reference }: Pick<InspectionSheet, 'reference'>,
  today: string,
): InspectionForm => ({
  start: {
    inspectedOn: today,
    ...(reference && {
      'reference.a': reference.a,
      'reference.b': reference.b,
      ...(reference.wall ? { 'reference.wall': reference.wall } : {}),
    }),
  },
  parts: [],
  notes: '',
})

/** A thing that answers to nothing in service on record, under a name of its own. */
export function addedPart(
  form: InspectionForm,
  kind: ComponentKind,
  name: string,
  key: string | null = null,
): PartForm {
  const numbers = form.parts.map(({ id }) => Number(/^added-(\d+)$/.exec(id)?.[1] ?? 0))
  const plain = name.trim() || kind.replaceAll('-', ' ')
  const names = new Set(form.parts.map(({ label }) => label.trim().toLowerCase()))
  let label = plain
  for (let at = 2; names.has(label.toLowerCase()); at++) label = `${plain} ${at}`
  return { id: `added-${Math.max(0, ...numbers) + 1}`, key, kind, label, typed: { outcome: 'found' } }
}

/** How far a step has come: whether one of the four outcomes was chosen. */
export const outcomeOf = ({ part }: PartStep): string | null => filled(part.typed).outcome ?? null

export function neighbors(
  steps: readonly Step[],
  name: string,
): { readonly back: string | null; readonly next: string | null } {
  const at = steps.findIndex((step) => step.name === name)
  return { back: steps[at - 1]?.name ?? null, next: steps[at + 1]?.name ?? null }
}
