import { FOUND_FIELDS, STATED_FIELDS } from '../../src/catalog/catalog.ts'
import type { Field, Fields } from '../../src/catalog/field.ts'
import { INSPECTION_FIELDS } from '../../src/catalog/inspection-fields.ts'
import { PERMIT_FIELDS } from '../../src/catalog/permit-fields.ts'

/**
 * A word of its own in every field that takes free text, made from the catalog: whoever adds a field has it here by
 * that alone. What is said of one thing in several places stays one thing, so the same text becomes the same word.
 */
export function canaries() {
  const where = new Map<string, string>()
  const words = new Map<string, string>()
  const also = new Set<string>()
  const fresh = (at: string): string => {
    const word = `zqx${where.size + 1000}q`
    where.set(word, at)
    return word
  }
  const same = (at: string, text: string): string => {
    const known = words.get(text.trim().toLowerCase())
    if (known) also.add(at)
    if (known) return known
    const word = fresh(at)
    words.set(text.trim().toLowerCase(), word)
    return word
  }

  /** Names by which a component or a corner is known in permits, keys, findings and decisions alike. */
  const NAMES = ['tag', 'label', 'number', 'replaces', 'a', 'b']
  function planted(name: string, field: Field, value: unknown, at: string): unknown {
    switch (field.value) {
      case 'line':
      case 'prose':
        if (name === 'key') return typeof value === 'string' ? key(value) : value
        return NAMES.includes(name) && typeof value === 'string' ? same(at, value) : fresh(at)
      case 'lines':
        return ((value ?? []) as readonly string[]).map((text) => same(at, text))
      case 'group':
        return value === null || value === undefined ? value : fill(field.parts, value, at)
      default:
        return value
    }
  }
  /** `74-118/tank` and `found/tank`, with both of their names changed. */
  function key(text: string): string {
    const [head = '', ...rest] = text.split('/')
    if (rest.length === 0) return text
    return `${head === 'found' ? head : same('permit.number', head)}/${same('key', rest.join('/'))}`
  }
  const fill = (fields: Fields, values: unknown, at: string): Record<string, unknown> => {
    const had = values as Record<string, unknown>
    const filled = Object.entries(fields).map(([name, field]) => [
      name,
      planted(name, field, had[name], `${at}.${name}`),
    ])
    return { ...had, ...Object.fromEntries(filled.filter(([, value]) => value !== undefined)) }
  }
  const components = (fields: Fields, values: unknown, at: string) =>
    ((values ?? []) as readonly object[]).map((it) => fill(fields, it, at))

  return {
    fresh,
    same,
    key,
    permit: <P extends { readonly components?: unknown }>(permit: P): P => ({
      ...(fill(PERMIT_FIELDS, permit, 'permit') as P),
      components: components(STATED_FIELDS, permit.components, 'stated'),
    }),
    findings: <F extends { readonly components?: unknown }>(findings: F): F => ({
      ...(fill(INSPECTION_FIELDS, findings, 'inspection') as F),
      components: components(FOUND_FIELDS, findings.components, 'found'),
    }),
    /** The fields whose words stand in a text, however it breaks its lines and wherever it puts its capitals. */
    in: (text: string): readonly string[] => [
      ...new Set(
        [
          ...text
            .toLowerCase()
            .replaceAll(/[\s\u00ad\u200b-]/g, '')
            .matchAll(/zqx\d{4,5}q/g),
        ].map(([word]) => where.get(word) ?? word),
      ),
    ],
    /** Every field that a word was put into. */
    planted: (): readonly string[] => [...new Set([...where.values(), ...also])].sort(),
  }
}
export type Canaries = ReturnType<typeof canaries>

/** Every field of free text in the catalog, by the names that `planted` uses. */
export const FREE_TEXT: readonly string[] = Object.entries({
  permit: PERMIT_FIELDS,
  stated: STATED_FIELDS,
  inspection: INSPECTION_FIELDS,
  found: FOUND_FIELDS,
})
  .flatMap(([place, fields]) => freeIn(fields, place))
  .sort()

function freeIn(fields: Fields, at: string): readonly string[] {
  return Object.entries(fields).flatMap(([name, field]) => {
    if ('parts' in field) return freeIn(field.parts, `${at}.${name}`)
    return ['line', 'prose', 'lines'].includes(field.value) ? [`${at}.${name}`] : []
  })
}

/** Of the names of things that are named elsewhere. */
export const NAMES_ANOTHER = ['found.key', 'stated.replaces']
