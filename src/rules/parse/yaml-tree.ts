import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, type Pair, parseDocument } from 'yaml'
import type { Fault } from './fault.ts'

export type Path = readonly (string | number)[]
export type Place = { readonly line: number; readonly col: number }

/** Plain data out of a YAML text, with the place of every key and value. Keys come out in camelCase. */
export type YamlTree = {
  readonly data: unknown
  readonly faults: readonly Fault[]
  /** The text is no YAML: what was read of it is guesswork, and only the faults of the text itself are told. */
  readonly broken: boolean
  /** Where a value stands; for one that is not there, the nearest thing around it that is. */
  readonly at: (path: Path) => Place
  /** Where a key stands. */
  readonly atKey: (path: Path) => Place
  readonly has: (path: Path) => boolean
}

const KEBAB = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/
const camel = (key: string): string =>
  key.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase())
export const kebab = (key: string): string =>
  key.replace(/[A-Z]|(?<=[a-z])[0-9]/g, (letter) => `-${letter.toLowerCase()}`)

const address = (path: Path): string => JSON.stringify(path)

/**
 * Strict reading: one document, no duplicate keys, no anchors, aliases, tags or merges (a pack must say what it means
 * where it says it), keys in kebab-case. Faults are collected; what can be read is still read.
 */
export function yamlTree(file: string, text: string): YamlTree {
  const lines = new LineCounter()
  const doc = parseDocument(text, {
    lineCounter: lines,
    uniqueKeys: true,
    strict: true,
    merge: false,
    prettyErrors: false,
  })
  const faults: Fault[] = []
  const [values, keys] = [new Map<string, Place>(), new Map<string, Place>()]
  const placeOf = (offset: number): Place => lines.linePos(offset)
  const fault = (offset: number, message: string): void => {
    faults.push({ file, ...placeOf(offset), message })
  }

  for (const error of [...doc.errors, ...doc.warnings]) {
    const duplicate = error.code === 'DUPLICATE_KEY'
    fault(error.pos[0], duplicate ? 'this key stands twice in one place' : `not YAML: ${error.message}`)
  }

  function read(node: unknown, path: Path): unknown {
    const start = (node as Node | null)?.range?.[0]
    if (start !== undefined) values.set(address(path), placeOf(start))
    if (isAlias(node)) {
      fault(start ?? 0, `the alias *${node.source} is not allowed: write the value out`)
      return undefined
    }
    if (isMap(node) || isSeq(node) || isScalar(node)) {
      if (node.anchor) fault(start ?? 0, `the anchor &${node.anchor} is not allowed: packs have no aliases`)
      if (node.tag && !node.tag.startsWith('tag:yaml.org,2002:'))
        fault(start ?? 0, `the tag ${node.tag} is not allowed`)
    }
    if (isMap(node)) return readMap(node.items as Pair<Node, Node>[], path)
    if (isSeq(node)) return node.items.map((item, i) => read(item, [...path, i]))
    return isScalar(node) ? node.value : null
  }

  function readMap(pairs: readonly Pair<Node, Node>[], path: Path): Record<string, unknown> {
    const out: Record<string, unknown> = {}
    for (const { key, value } of pairs) {
      const start = key?.range?.[0] ?? 0
      const name = isScalar(key) ? String(key.value) : ''
      if (!KEBAB.test(name))
        fault(start, `the key "${name}" is not in kebab-case (small letters and hyphens)`)
      const own = [...path, camel(name)]
      keys.set(address(own), placeOf(start))
      values.set(address(own), placeOf(start))
      Object.defineProperty(out, camel(name), {
        value: read(value, own),
        enumerable: true,
        configurable: true,
      })
    }
    return out
  }

  const broken = doc.errors.some(({ code }) => code !== 'DUPLICATE_KEY')
  const data = broken ? undefined : read(doc.contents, [])
  const at = (path: Path): Place => {
    for (let n = path.length; n >= 0; n--) {
      const place = values.get(address(path.slice(0, n)))
      if (place) return place
    }
    return { line: 1, col: 1 }
  }
  return {
    data,
    faults,
    broken,
    at,
    atKey: (path) => keys.get(address(path)) ?? at(path),
    has: (path) => values.has(address(path)),
  }
}
