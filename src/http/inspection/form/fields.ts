import { FOUND_FIELDS, fieldAt, type Place } from '../../../catalog/catalog.ts'
import { COMPONENT_FIELDS } from '../../../catalog/component-fields.ts'
import { type Field, SECTIONS, type Section, useOn, waysOf } from '../../../catalog/field.ts'
import { type ComponentKind, isVessel } from '../../../catalog/kinds.ts'
import type { Method } from '../../../measure/methods.ts'
import { choiceWords } from '../../../words/field-choices.ts'
import { fieldWords } from '../../../words/fields.ts'

export type Choice = { readonly value: string; readonly says: string }

/** A field of the catalog as the form asks for it, of a component of one kind. */
export type FormField = {
  readonly name: string
  readonly label: string
  readonly hint?: string
  readonly field: Field
  /** The ways in which a length can be taken, the usual one first; empty for what is no length. */
  readonly ways: readonly Method[]
  readonly choices: readonly Choice[]
}

export function formField(place: Place, name: string, kind?: ComponentKind): FormField {
  const field = fieldAt(place, name)!
  const { label, ask, help } = fieldWords(place, name, kind)
  return {
    name,
    label: ask ?? label,
    ...(help === undefined ? {} : { hint: help }),
    field,
    ways: field.value === 'length' || field.value === 'level' ? waysOf(field, kind) : [],
    choices: choicesOf(field, kind),
  }
}

/** The usual ones of a kind first; all others may be there too. */
function choicesOf(field: Field, kind: ComponentKind | undefined): readonly Choice[] {
  if (field.value === 'flag')
    return [
      { value: 'yes', says: 'Yes' },
      { value: 'no', says: 'No' },
    ]
  if (field.value !== 'choice' && field.value !== 'choices') return []
  const usual = (kind === undefined ? undefined : useOn(field, kind)?.usual) ?? []
  const all = field.choices.map(String)
  return [...usual, ...all.filter((choice) => !usual.includes(choice))].map((value) => ({
    value,
    says: choiceWords(field.choices, value),
  }))
}

export type Group = {
  readonly title: string
  readonly fields: readonly FormField[]
  /** Shown folded until something in it is typed, at fault or on record: most lots need few of its fields. */
  readonly folded?: true
}

const TITLES: { readonly [S in Section]: string } = {
  what: 'What it is',
  size: 'Size',
  contents: 'Level and solids, before pumping',
  state: 'Condition',
  distances: 'Distances, from its nearest edge',
}

/** What is asked of a component that was found, by its kind, in the order of the catalog. */
export function groupsFor(kind: ComponentKind): readonly Group[] {
  return SECTIONS.map((section) => ({
    title: section === 'size' && isVessel(kind) ? 'Inside, to the outlet' : TITLES[section],
    ...(section === 'distances' ? { folded: true as const } : {}),
    fields: FOUND_NAMES.filter((name) => {
      const field: Field = FOUND_FIELDS[name]
      return field.section === section && useOn(field, kind) !== undefined
    }).map((name) => formField('component', name, kind)),
  })).filter(({ fields }) => fields.length > 0)
}

const FOUND_NAMES = Object.keys(FOUND_FIELDS) as readonly (keyof typeof FOUND_FIELDS)[]

/** Whether any kind is asked for it in a group, and so can be noted of another kind as well. */
export const isInGroups = (name: string): boolean =>
  (COMPONENT_FIELDS as { readonly [name: string]: Field })[name]?.section !== undefined

/** Whether opening it lets a person fall in, breathe gas or break through: where the cautions stand above the form. */
export const isOpened = (kind: ComponentKind): boolean =>
  !['building-sewer', 'effluent-line', 'well'].includes(kind)
