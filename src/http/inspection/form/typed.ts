import { COMPONENT_KINDS, type ComponentKind } from '../../../catalog/kinds.ts'
import { marked, unmarked } from '../../../reading/entry/marked.ts'

/** What stands in the fields of one step, by the field's name, as it was typed. An empty field is as good as none. */
export type Typed = { readonly [field: string]: string }

/** What was typed for one component. */
export type PartForm = {
  /** Names its step in the address. */
  readonly id: string
  /** The as-built's key; null for a thing that is not on record. */
  readonly key: string | null
  readonly label: string
  /** What it is on record; `typed.kind` where it proved to be something else. */
  readonly kind: ComponentKind
  readonly typed: Typed
}

/** An inspection as far as it was typed: nothing in it has been read yet, so it can be kept whatever it says. */
export type InspectionForm = {
  readonly start: Typed
  readonly parts: readonly PartForm[]
  readonly notes: string
}

export const EMPTY_FORM: InspectionForm = { start: {}, parts: [], notes: '' }

/** The same without what is empty, so that two can be compared. */
export const filled = (typed: Typed): Typed =>
  Object.fromEntries(
    Object.entries(typed)
      .filter(([, text]) => text.trim() !== '')
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  )

/** What it proved to be, else what it is on record. */
export const kindOf = ({ kind, typed }: PartForm): ComponentKind =>
  COMPONENT_KINDS.find((known) => known === typed.kind) ?? kind

/** The form with one component's fields as they are now. */
export const withPart = (form: InspectionForm, part: PartForm): InspectionForm => ({
  ...form,
  parts: form.parts.some(({ id }) => id === part.id)
    ? form.parts.map((known) => (known.id === part.id ? part : known))
    : [...form.parts, part],
})

export const withoutPart = (form: InspectionForm, id: string): InspectionForm => ({
  ...form,
  parts: form.parts.filter((part) => part.id !== id),
})

/** Which rows of a list something was typed in; how a length was taken says nothing by itself. */
export const rowsIn = (typed: Typed, name: string): readonly number[] => {
  const rows = Object.keys(filled(typed)).flatMap((field) =>
    field.startsWith(`${name}.`) && !/\.(?:how|by|checked)$/.test(field) ? [Number(field.split('.')[1])] : [],
  )
  return [...new Set(rows)].sort((a, b) => a - b)
}

/**
 * What stands in a box, marked as meant where its tick says so. The tick holds what was ticked: of another value it says
 * nothing.
 */
export const meantText = (typed: Typed, name: string): string | undefined => {
  const text = typed[name]
  return text !== undefined && isConfirmed(typed, name) ? marked(text.trim()) : text
}

export const isConfirmed = (typed: Typed, name: string): boolean =>
  typed[name] !== undefined && typed[`${name}.checked`]?.trim() === typed[name].trim()

/** A value as its box and its tick have it. */
export function boxAndTick(name: string, asWritten: string): readonly (readonly [string, string])[] {
  const { text, checked } = unmarked(asWritten)
  return checked && marked(text) === asWritten
    ? [
        [name, text],
        [`${name}.checked`, text],
      ]
    : [[name, asWritten]]
}
