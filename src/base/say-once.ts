import { canonicalText } from './canonical.ts'

/** A value in which what stood in it more than once stands once, in a table, and is pointed at elsewhere. */
export type SaidOnce = { readonly shared: readonly unknown[]; readonly said: unknown }

/** Stands for an entry of the table by its place. No value of ours has a key of that name. */
const AT = '$'

/** Shorter than this an object costs less said again than pointed at. */
const LEAST_CHARACTERS = 24

/**
 * JSON with each object or list that occurs in it again said once. Lossless: `inFull` gives back an equal value. The
 * table is in the order in which its entries end, so an entry points only at earlier ones, and equal values give equal
 * results.
 */
export function sayOnce(value: unknown): SaidOnce {
  const times = new Map<string, number>()
  count(value, times)
  const shared: unknown[] = []
  const places = new Map<string, number>()
  const said = write(value)
  return { shared, said }

  function write(it: unknown): unknown {
    if (typeof it !== 'object' || it === null) return it
    const text = canonicalText(it)
    if (text.length < LEAST_CHARACTERS || (times.get(text) ?? 0) < 2) return inside(it)
    const known = places.get(text)
    if (known !== undefined) return { [AT]: known }
    shared.push(inside(it))
    places.set(text, shared.length - 1)
    return { [AT]: shared.length - 1 }
  }

  function inside(it: object): unknown {
    if (Array.isArray(it)) return it.map(write)
    return Object.fromEntries(inOrder(it).map(([key, own]) => [key, write(own)]))
  }
}

/** By name: a database gives keys back in an order of its own. */
const inOrder = (it: object): readonly (readonly [string, unknown])[] =>
  Object.entries(it)
    .filter(([, own]) => own !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))

/** Counts every object and list; what is inside one that was seen before is not counted again. */
function count(it: unknown, times: Map<string, number>): void {
  if (typeof it !== 'object' || it === null) return
  const text = canonicalText(it)
  const before = times.get(text) ?? 0
  times.set(text, before + 1)
  if (before > 0) return
  for (const own of Object.values(it)) count(own, times)
}

export function inFull({ shared, said }: SaidOnce): unknown {
  const full: unknown[] = []
  for (const entry of shared) full.push(read(entry))
  return read(said)

  function read(it: unknown): unknown {
    if (typeof it !== 'object' || it === null) return it
    if (Array.isArray(it)) return it.map(read)
    if (AT in it) return full[it[AT] as number]
    return Object.fromEntries(Object.entries(it).map(([key, own]) => [key, read(own)]))
  }
}
