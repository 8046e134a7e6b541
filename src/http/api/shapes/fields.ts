import { z } from 'zod'
import type { Field, Fields } from '../../../catalog/field.ts'
import type { RecordOf } from '../../../catalog/value-of.ts'
import type { StatedVolume } from '../../../measure/parse/volume.ts'
import type { FoundLength } from '../../../records/quantity.ts'
import { partialDay } from './basics.ts'
import {
  foundLength,
  presentFound,
  presentLength,
  presentVolume,
  statedLength,
  volume,
} from './quantities.ts'

/** How lengths are answered: as a paper states them, or as they were taken in the field. */
const LENGTHS = { stated: statedLength, found: foundLength } as const
type Lengths = keyof typeof LENGTHS
export type LengthAnswer<L extends Lengths> = z.output<(typeof LENGTHS)[L]>

/** A field in an answer: as the record holds it, lengths and volumes as answers have them. */
export type Answer<Fs, L extends Lengths> = Mutable<RecordOf<Fs, LengthAnswer<L>, z.output<typeof volume>>>
type Mutable<T> = T extends string | number | boolean | null
  ? T
  : T extends readonly (infer E)[]
    ? E[]
    : { -readonly [N in keyof T]: Mutable<T[N]> }

type AnswerShape<Fs, L extends Lengths> = {
  readonly [N in keyof Fs]: z.ZodType<Answer<Fs, L>[N & keyof Answer<Fs, L>]>
}

/** The schemas by which fields are answered, each made from its declaration. */
export const answerShape = <Fs extends Fields, L extends Lengths>(
  fields: Fs,
  lengths: L,
  at: string,
): AnswerShape<Fs, L> =>
  Object.fromEntries(
    Object.entries(fields).map(([name, field]) => {
      const value = answerSchema(field, lengths, `${at}.${name}`)
      return [name, (isAlways(field) ? value : value.nullable()).meta({ field: `${at}.${name}` })]
    }),
  ) as unknown as AnswerShape<Fs, L>

const isAlways = (field: Field): boolean => field.needed === true || 'default' in field

/** The schema of a value that is there. */
export function answerSchema(field: Field, lengths: Lengths, at: string): z.ZodType {
  switch (field.value) {
    case 'length':
    case 'level':
      return LENGTHS[lengths]
    case 'volume':
      return volume
    case 'whole':
    case 'number':
      return z.number()
    case 'date':
      return z.string().meta({ format: 'date' })
    case 'partial-date':
      return partialDay
    case 'flag':
      return z.boolean()
    case 'line':
    case 'prose':
      return z.string()
    case 'lines':
      return z.array(z.string())
    case 'choice':
      return z.literal([...field.choices])
    case 'choices':
      return z.array(z.literal([...field.choices]))
    case 'group':
      return groupSchema(field.parts, lengths, at)
    case 'rows':
      return z.array(groupSchema(field.parts, lengths, at.replace(/s$/, '')))
  }
}

/** A group has one schema under one name of the description, wherever it stands. */
const groups = new Map<Fields, Map<Lengths, z.ZodType>>()

function groupSchema(parts: Fields, lengths: Lengths, at: string): z.ZodType {
  const known = groups.get(parts) ?? new Map<Lengths, z.ZodType>()
  groups.set(parts, known)
  const name = at.slice(at.lastIndexOf('.') + 1)
  const made =
    known.get(lengths) ??
    z
      .object(answerShape(parts, lengths, at))
      .meta({ id: `${lengths === 'found' ? 'Found' : ''}${name.charAt(0).toUpperCase()}${name.slice(1)}` })
  known.set(lengths, made)
  return made
}

const PRESENT = { stated: presentLength, found: presentFound } as const

/** The fields of a record as they are answered. */
export const presentFields = <Fs extends Fields, L extends Lengths>(
  fields: Fs,
  lengths: L,
  record: { readonly [N in keyof Fs]: unknown },
): Answer<Fs, L> =>
  Object.fromEntries(
    Object.entries(fields).map(([name, field]) => [name, presentValue(field, lengths, record[name])]),
  ) as Answer<Fs, L>

export function presentValue(field: Field, lengths: Lengths, value: unknown): unknown {
  if (value === null || value === undefined) return null
  switch (field.value) {
    case 'length':
    case 'level':
      return PRESENT[lengths](value as FoundLength)
    case 'volume':
      return presentVolume(value as StatedVolume)
    case 'group':
      return presentFields(field.parts, lengths, value as { readonly [part: string]: unknown })
    case 'rows':
      return (value as readonly { readonly [part: string]: unknown }[]).map((row) =>
        presentFields(field.parts, lengths, row),
      )
    default:
      return value
  }
}
