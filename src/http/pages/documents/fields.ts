import { type Place, STATED_FIELDS } from '../../../catalog/catalog.ts'
import { type Field, type Fields, useOn } from '../../../catalog/field.ts'
import { COMPONENT_KINDS, type ComponentKind } from '../../../catalog/kinds.ts'
import { PERMIT_FIELDS as FIELDS_OF_PERMIT } from '../../../catalog/permit-fields.ts'
import { fieldWords } from '../../../words/fields.ts'

/** What a person fills in: its name is the pointer into the permit entry. */
export type Asked = {
  readonly name: string
  readonly label: string
  readonly input: 'line' | 'prose' | 'number' | 'choice' | 'list'
  readonly choices?: readonly string[]
  /** Null for what is no part of the entry. */
  readonly field: Field | null
  /** Shown whether or not anything was read. */
  readonly always: boolean
}

/** What every permit has, and every part on it. */
const ALWAYS: ReadonlySet<string> = new Set([
  ...['permit.number', 'permit.kind', 'permit.issuedOn', 'permit.approvedOn', 'permit.bedrooms'],
  ...['component.tag', 'component.kind'],
])

const INPUTS: { readonly [V in Field['value']]: Asked['input'] } = {
  length: 'line',
  level: 'line',
  volume: 'line',
  whole: 'number',
  number: 'number',
  date: 'line',
  'partial-date': 'line',
  flag: 'choice',
  line: 'line',
  prose: 'prose',
  lines: 'list',
  choice: 'choice',
  choices: 'list',
  group: 'line',
  rows: 'line',
}

/** A paper that tells more stretches of a line than these is entered by a program. */
const ROWS = 4

/** The boxes of a form for fields of the catalog; a group has one for each of its parts, a list of rows for each row. */
function asked(fields: Fields, place: Place, at: string, kind?: ComponentKind): readonly Asked[] {
  const boxes = (name: string, field: Field): readonly Asked[] => {
    if (field.value === 'group')
      return Object.entries(field.parts).flatMap(([part, of]) => boxes(`${name}.${part}`, of))
    if (field.value === 'rows') {
      if (kind !== undefined && useOn(field, kind) === undefined) return []
      return Array.from({ length: ROWS }, (_, row) =>
        Object.entries(field.parts).flatMap(([part, of]) =>
          boxes(`${name}.${row}.${part}`, of).map((box) => ({ ...box, label: `${box.label} (${row + 1})` })),
        ),
      ).flat()
    }
    const { label, help } = fieldWords(place, name, kind)
    return [
      {
        name: `${at}/${name.replaceAll('.', '/')}`,
        label: field.value === 'number' && help ? `${label} (${help})` : label,
        input: INPUTS[field.value],
        ...(field.value === 'choice' ? { choices: field.choices.map(String) } : {}),
        field,
        always: ALWAYS.has(`${place}.${name}`),
      },
    ]
  }
  return Object.entries(fields).flatMap(([name, field]) => boxes(name, field))
}

/** What the permit as a whole says. `/parcel` is where it belongs and is no part of the entry. */
export const PERMIT_FIELDS: readonly Asked[] = [
  { name: '/parcel', label: 'Parcel', input: 'line', field: null, always: true },
  ...asked(FIELDS_OF_PERMIT, 'permit', ''),
]

/** What one part in the ground says, the part being the `index`th of the form, and of that kind where it is known. */
export const partFields = (index: number, kind?: string): readonly Asked[] =>
  asked(
    STATED_FIELDS,
    'component',
    `/components/${index}`,
    COMPONENT_KINDS.find((known) => known === kind),
  )

export const leftOut = (index: number): string => `leave/components/${index}`
export const seenName = (name: string): string => `seen${name}`
