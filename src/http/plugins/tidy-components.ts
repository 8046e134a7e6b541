/** The parts of an OpenAPI document that this needs to know of. */
type Described = {
  readonly paths?: unknown
  readonly components?: { readonly schemas?: Readonly<Record<string, unknown>> }
}

const PREFIX = '#/components/schemas/'
const INPUT = /Input$/

/**
 * Every schema with a name is described twice, as it is taken and as it is answered, and most are only one of the two:
 * keeps what the paths lead to, and gives a schema that is only taken its plain name.
 */
export function tidyComponents<D extends Described>(document: D): D {
  const schemas = document.components?.schemas ?? {}
  const used = reachable(document.paths, schemas)
  const plainName = (name: string): string => {
    const plain = name.replace(INPUT, '')
    return used.has(plain) ? name : plain
  }
  const renamed = (value: unknown): unknown =>
    mapRefs(value, (ref) => `${PREFIX}${plainName(ref.slice(PREFIX.length))}`)
  const kept = [...used].sort().map((name) => [plainName(name), renamed(schemas[name])])
  return {
    ...document,
    paths: renamed(document.paths),
    components: { ...document.components, schemas: Object.fromEntries(kept) },
  }
}

function reachable(from: unknown, schemas: Readonly<Record<string, unknown>>): ReadonlySet<string> {
  const seen = new Set<string>()
  const walk = (value: unknown): void => {
    mapRefs(value, (ref) => {
      const name = ref.slice(PREFIX.length)
      if (ref.startsWith(PREFIX) && name in schemas && !seen.has(name)) {
        seen.add(name)
        walk(schemas[name])
      }
      return ref
    })
  }
  walk(from)
  return seen
}

/** A copy with every `$ref` put through `change`. A property that happens to be called so holds a schema, not a text. */
function mapRefs(value: unknown, change: (ref: string) => string): unknown {
  if (Array.isArray(value)) return value.map((item) => mapRefs(item, change))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([key, child]) => [
      key,
      key === '$ref' && typeof child === 'string' ? change(child) : mapRefs(child, change),
    ]),
  )
}
