import { FOUND_FIELDS } from '../../../catalog/catalog.ts'
import type { Field, Fields } from '../../../catalog/field.ts'
import { INSPECTION_FIELDS } from '../../../catalog/inspection-fields.ts'
import { numberTyped } from '../../../reading/entry/marked.ts'
import type { FoundComponent } from '../../../records/findings.ts'
import type { SheetPart } from '../sheet/sheet.ts'
import { boxAndTick, type InspectionForm, type PartForm, type Typed } from './typed.ts'

type Values = { readonly [field: string]: unknown }

/** A record as it is kept or as the API answers it: as far as a form goes they are the same. */
export type ToldRecord = Values & {
  readonly components: readonly (Pick<FoundComponent, 'key' | 'label' | 'kind'> & Values)[]
}

/** A length as the service tells it. */
type Told = {
  readonly ft: number
  readonly asWritten: string
  readonly method: string
  readonly instrument: string
}

/**
 * The form that these findings would have been typed into: reading it again gives the same record. A component with no
 * key goes to the step of its name and kind, where the record has one.
 */
export function formOf(
  record: ToldRecord,
  parts: readonly Pick<SheetPart, 'id' | 'key' | 'kind' | 'label'>[],
): InspectionForm {
  let added = 0
  const taken = new Set(record.components.map(({ key }) => key))
  const { notes = '', ...start } = typedOf(INSPECTION_FIELDS, record)
  return {
    start,
    notes,
    parts: record.components.map((found): PartForm => {
      const { key: _, label: __, kind: ___, ...typed } = typedOf(FOUND_FIELDS, found)
      const known =
        parts.find(({ key }) => key === found.key) ??
        parts.find(
          ({ key, kind, label }) =>
            !found.key && !taken.has(key) && kind === found.kind && label === found.label,
        )
      if (known) {
        const { id, key, kind } = known
        const other: Typed = kind === found.kind ? {} : { kind: found.kind }
        return { id, key, kind, label: found.label, typed: { ...other, ...typed } }
      }
      added += 1
      const { key, kind, label } = found
      return { id: `added-${added}`, key, kind, label, typed }
    }),
  }
}

/** What would stand in the boxes of fields that hold these values. */
const typedOf = (fields: Fields, values: Values, at = ''): Typed =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([name, field]) =>
      values[name] === null || values[name] === undefined
        ? []
        : boxesOf(field, `${at}${name}`, values[name]).filter(([, text]) => text !== ''),
    ),
  )

function boxesOf(field: Field, name: string, value: unknown): readonly (readonly [string, string])[] {
  switch (field.value) {
    case 'length':
      return lengthBoxes(name, value as Told)
    case 'level': {
      const told = value as Told
      const side = told.ft === 0 ? 'at' : told.ft < 0 ? 'below' : 'above'
      const written = side === 'at' && told.asWritten === '0 in' ? '' : told.asWritten
      return [...boxAndTick(name, written), [`${name}.how`, told.method], [`${name}.side`, side]]
    }
    case 'volume':
      return boxAndTick(name, (value as { readonly asWritten: string }).asWritten)
    case 'flag':
      return [[name, value === true ? 'yes' : 'no']]
    case 'choices':
      return (value as readonly string[]).map((choice) => [`${name}.${choice}`, 'on'])
    case 'group':
      return Object.entries(typedOf(field.parts, value as Values, `${name}.`))
    case 'rows':
      return (value as readonly Values[]).flatMap((row, at) =>
        Object.entries(typedOf(field.parts, row, `${name}.${at}.`)),
      )
    case 'whole':
    case 'number':
      return boxAndTick(name, String(numberTyped(field, value as number)))
    default:
      return [[name, String(value)]]
  }
}

const lengthBoxes = (name: string, { asWritten, method, instrument }: Told) =>
  [
    ...boxAndTick(name, asWritten),
    [`${name}.how`, method],
    [`${name}.by`, instrument === method ? '' : instrument],
  ] as const
