import { entryOfText } from '../../../reading/entry/typed-text.ts'
import type { ProposedField, ProposedPermit } from '../../../reading/proposal.ts'
import { type Asked, leftOut, PERMIT_FIELDS, partFields } from './fields.ts'
import { partsIn, type Typed } from './typed.ts'

/** The form as the body that the same operation takes from a program, and where in the form a pointer of it leads. */
export type FormRead = { readonly body: unknown; readonly nameAt: (pointer: string) => string | undefined }

type Tree = { [key: string]: unknown }

/**
 * What was left empty is left out. A value that starts with `?` is on the document and cannot be read; what follows is
 * what can be made out.
 */
export function readForm(
  typed: Typed,
  proposal: ProposedPermit | null,
  index: number,
  more: boolean,
): FormRead {
  const entry: Tree = { components: [] }
  const unreadable: { pointer: string; note: string }[] = []
  const names = new Map<string, string>()
  const take = (fields: readonly Asked[], pointerOf: (name: string) => string): void => {
    for (const asked of fields) {
      const text = typed[asked.name]?.trim() ?? ''
      const pointer = pointerOf(asked.name)
      names.set(pointer, asked.name)
      if (text === '') continue
      if (text.startsWith('?')) {
        const whole = pointer.replace(/\/(tie|segments)\/.*$/, '/$1')
        names.set(`/unreadable/${unreadable.length}/note`, asked.name)
        unreadable.push({ pointer: whole, note: text.slice(1).trim() || 'cannot be read' })
      } else put(entry, pointer, asked.field ? entryOfText(asked.field, text, /\s*,\s*/) : text)
    }
  }
  take(
    PERMIT_FIELDS.filter(({ name }) => name !== '/parcel'),
    (name) => name,
  )
  const sources: Tree = {}
  let kept = 0
  for (let part = 0; part < partsIn(typed); part++) {
    const fields = partFields(part)
    if (typed[leftOut(part)] !== undefined || fields.every(({ name }) => !typed[name]?.trim())) continue
    const to = `/components/${kept}`
    put(entry, to, {})
    const row = rowsFilled(typed, part)
    take(fields, (name) => row(name).replace(/^\/components\/\d+/, to))
    if (wasRenamed(typed, proposal, part)) Object.assign(sources, placesOf(proposal, part, to, entry))
    kept += 1
  }
  const permit = {
    parcel: typed['/parcel']?.trim() ?? '',
    ...(proposal === null ? {} : { proposal: index }),
    entry: unreadable.length > 0 ? { ...entry, unreadable } : entry,
    ...(Object.keys(sources).length > 0 ? { sources } : {}),
  }
  return {
    body: { permits: [permit], ...(more ? { more } : {}) },
    nameAt: (pointer) => nearest(names, pointer),
  }
}

function put(tree: Tree, pointer: string, value: unknown): void {
  const keys = pointer.split('/').slice(1)
  let at: Tree = tree
  for (const [index, key] of keys.slice(0, -1).entries()) {
    at[key] ??= /^\d+$/.test(keys[index + 1]!) ? [] : {}
    at = at[key] as Tree
  }
  at[keys.at(-1)!] = value
}

/** The reading's places follow a part by its name; where a person renamed it, the form gives them. */
const wasRenamed = (typed: Typed, proposal: ProposedPermit | null, part: number): boolean => {
  const tag = proposal?.entry.components[part]?.tag
  return tag !== undefined && typed[`/components/${part}/tag`]?.trim() !== tag
}

function placesOf(proposal: ProposedPermit | null, part: number, to: string, entry: Tree): Tree {
  const from = `/components/${part}/`
  const standing = (proposal?.fields ?? []).filter(({ pointer }) => pointer.startsWith(from))
  return Object.fromEntries(
    standing.flatMap(({ pointer, page, box, words }: ProposedField) => {
      const moved = pointer.replace(/^\/components\/\d+/, to)
      return isIn(entry, moved) ? [[moved, { page, box, words: words.slice(0, 500) || '-' }]] : []
    }),
  )
}

const isIn = (tree: Tree, pointer: string): boolean =>
  pointer
    .split('/')
    .slice(1)
    .reduce<unknown>((at, key) => (at as Tree | undefined)?.[key], tree) !== undefined

/** A fault of a whole is shown beside the first of its parts. */
function nearest(names: ReadonlyMap<string, string>, pointer: string): string | undefined {
  const own = names.get(pointer)
  if (own !== undefined) return own
  for (const [at, name] of names) if (at.startsWith(`${pointer}/`)) return name
  const up = pointer.slice(0, pointer.lastIndexOf('/'))
  return up.split('/').length > 2 ? nearest(names, up) : undefined
}

/** Rows that were left empty between others are none: what stands below them moves up. */
function rowsFilled(typed: Typed, part: number): (name: string) => string {
  const at = new RegExp(`^/components/${part}/segments/(\\d+)/`)
  const filled = Object.entries(typed).flatMap(([name, text]) =>
    text.trim() === '' ? [] : (at.exec(name)?.[1] ?? []),
  )
  const order = [...new Set(filled)].sort((a, b) => Number(a) - Number(b))
  return (name) =>
    name.replace(/\/segments\/(\d+)\//, (whole, row: string) =>
      order.includes(row) ? `/segments/${order.indexOf(row)}/` : whole,
    )
}
