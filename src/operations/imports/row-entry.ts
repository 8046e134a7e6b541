import type { Field } from '../../catalog/field.ts'
import { entryOfText } from '../../reading/entry/typed-text.ts'
import type { RowFault } from '../../store/import-rejections.ts'
import type { ImportHead, ImportKind, Mapping } from '../../store/imports.ts'
import { BESIDE, componentTarget, fieldOfTarget, kindOfTag } from './kinds.ts'
import type { Row } from './read-rows.ts'

/** A row as its kind's entry, not yet validated; and which column each value came from, by JSON Pointer. */
export type RowEntry = {
  readonly line: number
  /** Values that are no part of the entry: `parcel`, `address`, `firm`; for parcels all of them. */
  readonly beside: ReadonlyMap<string, string>
  readonly entry: Record<string, unknown>
  readonly columns: ReadonlyMap<string, Origin>
}
type Origin = { readonly column: string; readonly had: string }

const FIGURE = /^-?\d[\d,]*(\.\d+)?$|^-?\.\d+$/

/** Makes rows to entries by a mapping; laid out once for a file. */
export function rowReader(
  kind: ImportKind,
  { headings }: ImportHead,
  mapping: Mapping,
): (row: Row) => RowEntry {
  const filling = mapping.columns.flatMap(({ column, to, unit, values }) => {
    const index = headings.indexOf(column)
    if (to === null || index === -1) return []
    const plainValues = new Map(Object.entries(values).map(([from, value]) => [plain(from), value]))
    return [{ column, index, to, unit, plainValues, put: placeOf(to), field: fieldOfTarget(kind, to) }]
  })
  const always = Object.entries(mapping.always).map(([to, value]) => ({
    to,
    value,
    put: placeOf(to),
    field: fieldOfTarget(kind, to),
  }))

  return (row) => {
    const beside = new Map<string, string>()
    const entry: Record<string, unknown> = isObject(row.entry) ? { ...row.entry } : {}
    const columns = new Map<string, Origin>()
    const components = new Map<string, Record<string, unknown>>()
    const set = (to: string, put: Place, value: unknown, origin: Origin | undefined) => {
      if (kind === 'parcels' || BESIDE.has(to)) beside.set(to, String(value))
      else put(entry, components, value)
      if (origin) columns.set(to, origin)
    }
    for (const { column, index, to, unit, plainValues, put, field } of filling) {
      const had = row.cells[index] ?? ''
      if (had === '' || (column === 'entry' && row.entry !== undefined)) continue
      const meant = plainValues.get(plain(had)) ?? had
      const value = unit !== null && FIGURE.test(meant) ? `${meant} ${unit}` : meant
      set(to, put, entered(field, value), { column, had })
    }
    for (const { to, value, put, field } of always) {
      const component = componentTarget(to)
      // What holds for a component holds where the row has one.
      if (columns.has(to) || (component && !components.has(component.tag))) continue
      if (!(to in entry)) set(to, put, entered(field, value), undefined)
    }
    if (components.size > 0) {
      const own = Array.isArray(entry.components) ? (entry.components as unknown[]) : []
      entry.components = [...own, ...[...components].map(([tag, fields]) => component(kind, tag, fields))]
    }
    return { line: row.line, beside, entry, columns }
  }
}

type Place = (
  entry: Record<string, unknown>,
  components: Map<string, Record<string, unknown>>,
  value: unknown,
) => void

function placeOf(to: string): Place {
  const component = componentTarget(to)
  if (component) {
    const { tag, field } = component
    return (_, components, value) => {
      const fields = components.get(tag) ?? {}
      components.set(tag, fields)
      put(fields, field.split('.'), value)
    }
  }
  const path = to.split('.')
  return (entry, _, value) => put(entry, path, value)
}

function put(into: Record<string, unknown>, [key, ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) into[key!] = value
  else {
    const known = into[key!]
    const fresh = /^\d$/.test(rest[0]!) ? [] : {}
    const inner = (isObject(known) || Array.isArray(known) ? known : fresh) as Record<string, unknown>
    into[key!] = inner
    put(inner, rest, value)
  }
}

function component(kind: ImportKind, tag: string, fields: Record<string, unknown>): Record<string, unknown> {
  const named = kindOfTag(tag)
  const own = { ...(named === undefined ? {} : { kind: named }), ...fields }
  // Whoever writes down what something measures has found it.
  return kind === 'findings' ? { label: tag, outcome: 'found', ...own } : { tag, ...own }
}

/** What a cell says, as its field is entered; several names stand in one cell with ; between them. */
const entered = (field: Field | undefined, text: string): unknown =>
  field === undefined ? text : entryOfText(field, text, /\s*;\s*/)

const plain = (text: string): string => text.trim().toLowerCase()
const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The fault of an entry told by the column it came from, with what stands there. */
export function asRowFault(
  { entry, columns }: RowEntry,
  { pointer, message }: { readonly pointer: string; readonly message: string },
): RowFault {
  const origin = columns.get(targetOfPointer(entry, pointer))
  return origin
    ? { column: origin.column, had: origin.had, wants: message }
    : { column: pointer === '' ? null : pointer, had: null, wants: message }
}

/** `/components/0/capacity` is what the column of `components.tank.capacity` filled. */
function targetOfPointer(entry: Record<string, unknown>, pointer: string): string {
  const [first, index, ...rest] = pointer.slice(1).split('/')
  if (first !== 'components' || index === undefined)
    return [first, index, ...rest].filter((it) => it !== undefined).join('.')
  const list = entry.components as readonly { readonly tag?: string; readonly label?: string }[] | undefined
  const it = list?.[Number(index)]
  return ['components', it?.tag ?? it?.label ?? index, ...rest].join('.')
}
