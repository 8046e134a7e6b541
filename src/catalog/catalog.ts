import { COMPONENT_FIELDS } from './component-fields.ts'
import { MEASURES } from './component-measures.ts'
import type { Field, Fields } from './field.ts'
import { INSPECTION_FIELDS } from './inspection-fields.ts'
import { PERMIT_FIELDS } from './permit-fields.ts'
import { type EnteredBy, enteredBy } from './value-of.ts'

export const STATED_FIELDS = enteredBy(COMPONENT_FIELDS, 'permit')
export const FOUND_FIELDS = enteredBy(COMPONENT_FIELDS, 'inspection')
export type StatedFields = EnteredBy<typeof COMPONENT_FIELDS, 'permit'>
export type FoundFields = EnteredBy<typeof COMPONENT_FIELDS, 'inspection'>

/** What a permit says of a component and the as-built carries on: folded, corrected, compared with what is found. */
export type MeasureName = keyof typeof MEASURES
export const MEASURE_NAMES = Object.keys(MEASURES) as readonly MeasureName[]

/** What a permit says of the whole system and the as-built carries on. */
export type SystemField = {
  [N in keyof typeof PERMIT_FIELDS]: (typeof PERMIT_FIELDS)[N] extends { asBuilt: 'design' | 'site' }
    ? N
    : never
}[keyof typeof PERMIT_FIELDS]
export const SYSTEM_FIELDS = Object.entries(PERMIT_FIELDS as Fields).flatMap(([name, { asBuilt }]) =>
  asBuilt === undefined ? [] : [name],
) as readonly string[] as readonly SystemField[]

/** Where in the catalog a field stands; what it is called there is its key in `words/fields.ts`. */
export const CATALOG = {
  permit: PERMIT_FIELDS,
  inspection: INSPECTION_FIELDS,
  component: COMPONENT_FIELDS,
} as const
export type Place = keyof typeof CATALOG

/** A field by its path within its place: `tie.a`; of one of several rows `segments.0.from`, of each `segments.from`. */
export function fieldAt(place: Place, path: string): Field | undefined {
  const { name, part, row } = pathOf(path)
  const field = own(CATALOG[place], name)
  if (part === undefined) return field
  if (field?.value === 'rows') return own(field.parts, part)
  return field?.value === 'group' && row === undefined ? own(field.parts, part) : undefined
}

/** `segments.0.from`: the field, which of its rows, and which part of it. */
export function pathOf(path: string): {
  readonly name: string
  readonly row?: number
  readonly part?: string
} {
  const [name = '', second, third] = path.split('.')
  if (second === undefined) return { name }
  return /^\d+$/.test(second)
    ? { name, row: Number(second), ...(third === undefined ? {} : { part: third }) }
    : { name, part: second }
}

const own = (fields: Fields, name: string): Field | undefined =>
  Object.hasOwn(fields, name) ? fields[name] : undefined
