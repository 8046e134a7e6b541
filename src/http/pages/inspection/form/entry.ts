import { SEARCH_METHODS } from '../../../../records/findings.ts'
import { ALL_FIELDS, groupsFor } from './asked.ts'
import type { Field } from './fields.ts'
import { GROUND } from './fields.ts'
import { filled, type InspectionForm, kindOf, type PartForm, type Typed } from './typed.ts'

/** What is sent of a form: an entry of `reading/entry/findings.ts`, unread, and whose component stands at each index. */
export type Unread = { readonly entry: unknown; readonly parts: readonly PartForm[] }

/** A component counts once something was typed for it: which of the four outcomes, if nothing else. */
export function entryOf({ start, parts, notes }: InspectionForm): Unread {
  const told = parts.filter(({ typed }) => Object.keys(filled(typed)).length > 0)
  const entry = {
    ...startEntry(start),
    components: told.map(componentEntry),
    ...(notes.trim() === '' ? {} : { notes }),
  }
  return { entry, parts: told }
}

function startEntry(start: Typed): object {
  const said = filled(start)
  const corners = ['reference.a', 'reference.b', 'reference.baseline', 'reference.bearingDeg']
  return {
    inspectedOn: said.inspectedOn ?? '',
    ...(said.occupancy ? { occupancy: said.occupancy } : {}),
    ...number('people', said),
    ...number('bedroomsCounted', said),
    ...(said.lastPumpedOn ? { lastPumpedOn: said.lastPumpedOn } : {}),
    ...(corners.some((name) => said[name] !== undefined)
      ? {
          reference: {
            a: said['reference.a'] ?? '',
            b: said['reference.b'] ?? '',
            ...named('baseline', lengthEntry('reference.baseline', said, GROUND[0])),
            ...(said['reference.wall'] ? { wall: said['reference.wall'] } : {}),
            ...named('bearingDeg', numberIn(said['reference.bearingDeg'])),
          },
        }
      : {}),
  }
}

/** Of a thing that was not found nothing was measured: what stands in fields no longer shown is not sent. */
function componentEntry(part: PartForm): object {
  const said = filled(part.typed)
  return {
    ...(part.key === null ? {} : { key: part.key }),
    label: part.label,
    kind: kindOf(part),
    outcome: said.outcome,
    ...(said.outcome === 'found' ? measures(part, said) : {}),
    ...(said.outcome === 'not-found' ? searched(said) : {}),
    ...(said.outcome === 'not-reached' && said.notReachedBecause
      ? { notReachedBecause: said.notReachedBecause }
      : {}),
    ...(said.note ? { note: said.note } : {}),
  }
}

const methodsOf = (said: Typed): readonly string[] =>
  SEARCH_METHODS.filter((method) => said[`searchedBy.${method}`] !== undefined)

const searched = (said: Typed): object => ({
  searchedBy: methodsOf(said),
  ...named('searchedWithin', lengthEntry('searchedWithin', said, GROUND[0])),
})

function measures(part: PartForm, said: Typed): object {
  const own = new Map(groupsFor(kindOf(part)).flatMap(({ fields }) => fields.map((it) => [it.name, it])))
  const methods = methodsOf(said)
  const values: Record<string, unknown> = methods.length > 0 ? { searchedBy: methods } : {}
  for (const name of [...ALL_FIELDS.keys(), 'searchedWithin']) {
    if (name.includes('.') || name === 'note') continue
    const value = valueIn(own.get(name) ?? ALL_FIELDS.get(name) ?? WITHIN, said)
    if (value !== undefined) values[name] = value
  }
  return { ...values, ...named('tie', tieEntry(said)), ...named('fix', fixEntry(said)) }
}

const WITHIN: Field = { name: 'searchedWithin', label: '', as: 'length', ways: GROUND }

function valueIn(field: Field, said: Typed): unknown {
  const text = said[field.name]
  switch (field.as) {
    case 'length':
      return lengthEntry(field.name, said, field.ways[0])
    case 'level':
      return levelEntry(field.name, said, field.ways[0])
    case 'whole':
      return numberIn(text)
    case 'buttons':
      return text === 'yes' ? true : text === 'no' ? false : text
    default:
      return text
  }
}

/** A length with how it was taken; with what, only where that was said. */
function lengthEntry(name: string, said: Typed, usual: string): unknown {
  const text = said[name]
  if (text === undefined) return undefined
  const by = said[`${name}.by`]
  return { length: text, method: said[`${name}.how`] ?? usual, ...(by ? { instrument: by } : {}) }
}

function levelEntry(name: string, said: Typed, usual: string): unknown {
  const [text, side] = [said[name], said[`${name}.side`]]
  if (text === undefined && side !== 'at') return undefined
  const method = said[`${name}.how`] ?? usual
  if (side === 'below') return { below: text, method }
  return { above: side === 'at' ? (text ?? '0 in') : text, method }
}

function tieEntry(said: Typed): unknown {
  const [a, b] = ['a', 'b'].map((corner) => lengthEntry(`tie.${corner}`, said, GROUND[0]))
  if (a === undefined && b === undefined) return undefined
  return {
    ...named('a', a),
    ...named('b', b),
    ...(said['tie.side'] ? { side: said['tie.side'] } : {}),
    ...(said['tie.sideWords'] ? { sideWords: said['tie.sideWords'] } : {}),
  }
}

function fixEntry(said: Typed): unknown {
  const [lat, lon, radiusFt, coverage] = ['lat', 'lon', 'radiusFt', 'coverage'].map((name) =>
    numberIn(said[`fix.${name}`]),
  )
  if (lat === undefined && lon === undefined) return undefined
  return { lat, lon, radiusFt, ...(coverage === undefined ? {} : { coverage }) }
}

const named = (name: string, value: unknown): object => (value === undefined ? {} : { [name]: value })
const number = (name: string, said: Typed): object => named(name, numberIn(said[name]))

/** A number where it is one; else the text, so that the fault can say what stands there. */
function numberIn(text: string | undefined): unknown {
  if (text === undefined) return undefined
  const value = Number(text)
  return Number.isFinite(value) ? value : text
}
