import { z } from 'zod'
import type { Place } from '../../catalog/catalog.ts'
import type { Field, FieldOf, Fields } from '../../catalog/field.ts'
import type { StatedLength } from '../../measure/parse/length.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { FoundLengthTyped, LengthTyped, ShapeOf } from './entry-of.ts'
import { line, optional, prose } from './fields.ts'
import { foundLength, levelEntry } from './found-length.ts'
import { numberEntry } from './number-entry.ts'
import { dateEntry, lengthEntry, partialDateEntry, volumeEntry } from './quantity.ts'
import { beyondPossible, isByKind, issueOf, type Measured, unusualValue } from './unusual.ts'

declare module 'zod' {
  interface GlobalMeta {
    /** The field of the catalog that a value is: its place there, under which it has its words. */
    field?: string
  }
}

/** How lengths are typed: as a paper states them, or as they are taken in the field. */
type Lengths = 'stated' | 'found'
type Typed<L extends Lengths> = L extends 'stated' ? LengthTyped : FoundLengthTyped
type Held<L extends Lengths> = L extends 'stated' ? StatedLength : FoundLength

/** The schemas of fields, each made from its declaration. */
export function shapeOf<Fs extends Fields, L extends Lengths>(
  fields: Fs,
  lengths: L,
  at: Place | `${Place}.${string}`,
): ShapeOf<Fs, Typed<L>, Held<L>> {
  return Object.fromEntries(
    Object.entries(fields).map(([name, field]) => [name, fieldSchema(field, lengths, `${at}.${name}`)]),
  ) as unknown as ShapeOf<Fs, Typed<L>, Held<L>>
}

function fieldSchema(field: Field, lengths: Lengths, at: `${Place}.${string}`): z.ZodType {
  const value = valueSchema(field, lengths, at)
  const given = 'default' in field ? value.default(field.default as never) : value
  const schema = field.needed || 'default' in field ? given : optional(given)
  return schema.meta({ field: at, ...(field.example === undefined ? {} : { examples: [field.example] }) })
}

function valueSchema(field: Field, lengths: Lengths, at: `${Place}.${string}`): z.ZodType {
  switch (field.value) {
    case 'length':
      return within(lengths === 'stated' ? lengthEntry : foundLength(field.ways[0]), field)
    case 'level':
      return within(levelEntry(field.ways[0]), field)
    case 'volume':
      return within(volumeEntry, field)
    case 'whole':
    case 'number':
      return numberEntry(field)
    case 'date':
      return dateEntry
    case 'partial-date':
      return partialDateEntry
    case 'flag':
      return z.boolean()
    case 'line':
      return line(field.most)
    case 'prose':
      return prose(field.most)
    case 'lines':
      return z.array(line(field.most)).max(20)
    case 'choice':
      return z.literal([...field.choices])
    case 'choices':
      return z.array(z.literal([...field.choices])).max(field.choices.length)
    case 'group':
      return z.strictObject(shapeOf(field.parts, lengths, at))
    case 'rows':
      // No row is as good as nothing said.
      return z
        .array(z.strictObject(shapeOf(field.parts, lengths, at)))
        .max(field.most)
        .transform((rows) => (rows.length === 0 ? null : rows))
  }
}

/** What is usual for some kinds of component alone is asked where the kind is known: see `unusual-parts.ts`. */
const within = <T extends Measured>(
  schema: z.ZodType<T>,
  field: FieldOf<'length'> | FieldOf<'level'> | FieldOf<'volume'>,
) =>
  schema.superRefine((value, context) => {
    const fault = beyondPossible(field, value) ?? (isByKind(field) ? null : unusualValue(field, value))
    if (fault !== null) context.addIssue(issueOf(fault))
  })

/** The schema of one field as a permit states it. */
export const statedField = (field: Field, at: `${Place}.${string}`): z.ZodType =>
  fieldSchema(field, 'stated', at)
