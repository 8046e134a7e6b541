import { FOUND_FIELDS } from '../../../catalog/catalog.ts'
import type { SearchOutcome } from '../../../catalog/choices.ts'
import { type Field, type Fields, waysOf } from '../../../catalog/field.ts'
import { INSPECTION_FIELDS } from '../../../catalog/inspection-fields.ts'
import type { ComponentKind } from '../../../catalog/kinds.ts'
import { entryOfText } from '../../../reading/entry/typed-text.ts'
import { filled, type InspectionForm, kindOf, meantText, type PartForm, rowsIn, type Typed } from './typed.ts'

/** What is sent of a form: an entry of `reading/entry/findings.ts`, unread. */
export const entryOf = ({ start, parts, notes }: InspectionForm): object => ({
  ...inspectionEntryOf({ ...start, notes }),
  components: parts.filter(isAnswered).map(componentEntryOf),
})

/** A component counts once something was typed for it: which of the four outcomes, if nothing else. */
export const isAnswered = ({ typed }: PartForm): boolean => Object.keys(filled(typed)).length > 0

export const inspectionEntryOf = (typed: Typed): Entry => entryIn(INSPECTION_FIELDS, typed)

type Entry = { readonly [field: string]: unknown }

/** Of a component that was not found nothing was measured: what stands in boxes no longer shown is not sent. */
const ASKED: { readonly [O in Exclude<SearchOutcome, 'found'>]: readonly string[] } = {
  'not-found': ['searchedBy', 'searchedWithin', 'note'],
  'not-reached': ['notReachedBecause', 'note'],
  'not-looked-for': ['note'],
}

export function componentEntryOf(part: PartForm): Entry {
  const { outcome, ...typed } = part.typed
  const kind = kindOf(part)
  const own = { ...(part.key === null ? {} : { key: part.key }), label: part.label, kind, outcome }
  const { notReachedBecause: _, key: __, label: ___, kind: ____, ...ofFound } = FOUND_FIELDS as Fields
  const asked = outcome === undefined ? undefined : ASKED[outcome as keyof typeof ASKED]
  const fields = asked
    ? Object.fromEntries(asked.map((name) => [name, (FOUND_FIELDS as Fields)[name]!]))
    : ofFound
  return { ...entryIn(fields, typed, kind), ...own }
}

/** What stands in the boxes of fields, as their entry takes it; nothing of those in which nothing does. */
function entryIn(fields: Fields, typed: Typed, kind?: ComponentKind, at = ''): Record<string, unknown> {
  const said = filled(typed)
  return Object.fromEntries(
    Object.entries(fields).flatMap(([name, field]) => {
      const value = valueIn(field, `${at}${name}`, said, kind)
      return value === undefined ? [] : [[name, value]]
    }),
  )
}

function valueIn(field: Field, name: string, said: Typed, kind?: ComponentKind): unknown {
  const text = meantText(said, name)
  switch (field.value) {
    case 'length': {
      if (text === undefined) return undefined
      const by = said[`${name}.by`]
      return {
        length: text,
        method: said[`${name}.how`] ?? waysOf(field, kind)[0],
        ...(by ? { instrument: by } : {}),
      }
    }
    case 'level': {
      const side = said[`${name}.side`]
      if (text === undefined && side !== 'at') return undefined
      const method = said[`${name}.how`] ?? waysOf(field, kind)[0]
      return side === 'below' ? { below: text, method } : { above: text ?? '0 in', method }
    }
    case 'choices': {
      const chosen = field.choices.filter((choice) => said[`${name}.${choice}`] !== undefined)
      return chosen.length === 0 ? undefined : chosen
    }
    case 'group':
      return isBegun(field.parts, name, said) ? entryIn(field.parts, said, kind, `${name}.`) : undefined
    case 'rows': {
      const rows = rowsIn(said, name)
      return rows.length === 0
        ? undefined
        : rows.map((row) => entryIn(field.parts, said, kind, `${name}.${row}.`))
    }
    default:
      return text === undefined ? undefined : entryOfText(field, text)
  }
}

/** A tie is one from its first distance on; which side it lies on says nothing by itself. */
const isBegun = (parts: Fields, name: string, said: Typed): boolean =>
  Object.entries(parts).some(
    ([part, { needed, value }]) =>
      (needed || value === 'length' || value === 'number') && said[`${name}.${part}`] !== undefined,
  )
