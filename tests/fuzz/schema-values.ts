import fc from 'fast-check'

export type Schema = {
  readonly $ref?: string
  readonly type?: string
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly examples?: readonly unknown[]
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly additionalProperties?: boolean | Schema
  readonly items?: Schema
  readonly minItems?: number
  readonly maxItems?: number
  readonly format?: string
  readonly pattern?: string
  readonly minLength?: number
  readonly maxLength?: number
  readonly minimum?: number
  readonly maximum?: number
  readonly exclusiveMinimum?: number
  readonly exclusiveMaximum?: number
}

const DEEPEST = 7
/** Leap days, the ends of centuries, before the first permits, and the ends of what a date can be. */
const DATES = [
  '2024-02-29',
  '2000-02-29',
  '1899-12-31',
  '1900-03-01',
  '1970-01-01',
  '2026-06-01',
  '0001-01-01',
]

/** Values that a schema of the description allows, its own examples among them. `ids` are what ids are drawn from. */
export function schemaValues(components: Readonly<Record<string, Schema>>, ids: fc.Arbitrary<string>) {
  const known = new Map<string, fc.Arbitrary<unknown>>()

  function fitting(schema: Schema, depth = 0): fc.Arbitrary<unknown> {
    if (schema.$ref !== undefined) {
      const key = `${schema.$ref} ${Math.min(depth, DEEPEST)}`
      const found = known.get(key) ?? fitting(components[schema.$ref.split('/').at(-1)!]!, depth + 1)
      known.set(key, found)
      return found
    }
    const made = madeFrom(schema, depth)
    if (!schema.examples?.length) return made
    return fc.oneof(
      { weight: 2, arbitrary: fc.constantFrom(...schema.examples) },
      { weight: 1, arbitrary: made },
    )
  }

  function madeFrom(schema: Schema, depth: number): fc.Arbitrary<unknown> {
    if (schema.const !== undefined) return fc.constant(schema.const)
    if (schema.enum) return fc.constantFrom(...schema.enum)
    const choices = schema.anyOf ?? schema.oneOf
    if (choices) {
      const plain = choices.filter(
        ({ $ref, type }) => $ref === undefined && type !== 'object' && type !== 'array',
      )
      const open = depth >= DEEPEST && plain.length > 0 ? plain : choices
      return fc.oneof(...open.map((choice) => fitting(choice, depth + 1)))
    }
    switch (schema.type) {
      case 'object':
        return objectOf(schema, depth)
      case 'array': {
        const least = schema.minItems ?? 0
        const most = depth >= DEEPEST ? least : Math.min(schema.maxItems ?? 3, least + 3)
        return fc.array(fitting(schema.items ?? {}, depth + 1), { minLength: least, maxLength: most })
      }
      case 'string':
        return textOf(schema)
      case 'integer':
      case 'number':
        return numberOf(schema)
      case 'boolean':
        return fc.boolean()
      case 'null':
        return fc.constant(null)
      default:
        return fc.jsonValue({ maxDepth: 2 })
    }
  }

  function objectOf(schema: Schema, depth: number): fc.Arbitrary<unknown> {
    const { properties = {}, required = [], additionalProperties: others } = schema
    const named = Object.entries(properties).filter(([name]) => depth < DEEPEST || required.includes(name))
    const record = fc.record(
      Object.fromEntries(named.map(([name, inner]) => [name, fitting(inner, depth + 1)])),
      { requiredKeys: [...required] },
    )
    if (typeof others !== 'object' || depth >= DEEPEST) return record
    const more = fc.dictionary(fc.string({ minLength: 1, maxLength: 12 }), fitting(others, depth + 1), {
      maxKeys: 2,
    })
    return fc.tuple(more, record).map(([extra, base]) => ({ ...extra, ...base }))
  }

  function textOf({ format, pattern, minLength = 0, maxLength = 60 }: Schema): fc.Arbitrary<string> {
    if (format === 'uuid') return ids
    if (format === 'date') return fc.constantFrom(...DATES)
    if (format === 'date-time') return fc.constantFrom(...DATES).map((date) => `${date}T23:59:59Z`)
    if (pattern !== undefined) return fc.stringMatching(new RegExp(pattern))
    const length = { minLength, maxLength: Math.max(minLength, Math.min(maxLength, 60)) }
    return fc.oneof(fc.string(length), fc.string({ ...length, unit: 'grapheme' }))
  }

  function numberOf(schema: Schema): fc.Arbitrary<number> {
    const { type, minimum, maximum, exclusiveMinimum, exclusiveMaximum } = schema
    const [low, high] = [minimum ?? exclusiveMinimum ?? -1e6, maximum ?? exclusiveMaximum ?? 1e6]
    if (type === 'integer')
      return fc.integer({ min: Math.max(low, -(2 ** 31)), max: Math.min(high, 2 ** 31) })
    return fc.double({
      min: low,
      max: high,
      noNaN: true,
      minExcluded: exclusiveMinimum !== undefined,
      maxExcluded: exclusiveMaximum !== undefined,
    })
  }

  return fitting
}
