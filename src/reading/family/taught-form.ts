import { z } from 'zod'
import { COMPONENT_KINDS } from '../../catalog/kinds.ts'
import { MEASURE_ASKS, PERMIT_ASKS } from '../asks.ts'

const fraction = z.number().min(-1).max(1.5)
const box = z.strictObject({ x: fraction, y: fraction, w: fraction, h: fraction })

/** A printed word of a form and its place. */
const mark = z.strictObject({ text: z.string().min(1).max(60), box })

const fieldPlace = z.strictObject({
  ask: z.enum([...PERMIT_ASKS, ...MEASURE_ASKS]),
  /** Of which component; null for the permit's own. */
  kind: z.enum(COMPONENT_KINDS).nullable(),
  /** What a figure without a unit is here; null where the papers write it or it was not always the same. */
  unit: z.enum(['ft', 'in', 'gal']).nullable(),
  box,
  /** Where values begin, if all that were seen begin there: one that begins later has lost its beginning. */
  left: fraction.nullable(),
  /** Printed words close by that stand wherever the field does: with none of them there, it is another form's place. */
  captions: z.array(mark).max(12),
  /** On how many of the papers that taught it the place gives what was confirmed. */
  papers: z.int().min(1).max(1_000),
})

/** Sheets of several permits, as registers are: each permit begins with its number, and its values lie about that. */
const rows = z.strictObject({
  /** Where numbers begin across the sheet; two where permits stand side by side. */
  columns: z.array(fraction).min(1).max(6),
  /** How far down the sheet they stand, from the first of them to the last there can be. */
  from: fraction,
  to: fraction,
  /** The least that lies between two of a column. */
  pitch: fraction,
  /** How far above and below its number a permit has values. */
  above: fraction,
  below: fraction,
  /** Boxes count from the left end of the number and the middle of its height. */
  fields: z.array(fieldPlace).max(200),
})

const sheet = z.strictObject({
  widthPt: z.number().min(1).max(20_000),
  heightPt: z.number().min(1).max(20_000),
  marks: z.array(mark).max(1_000),
  /** Of sheets with one permit; none where there are rows. */
  fields: z.array(fieldPlace).max(200),
  rows: rows.optional(),
})

/**
 * What a form taught: by which printed words it is known, and where each value lies, sheet by sheet. Data and no more:
 * the same whether it was learned here or brought from another county. Boxes are fractions of the sheet upright.
 */
export const taughtForm = z.strictObject({
  version: z.literal(1),
  /** How many confirmed papers it was learned from. */
  papers: z.int().min(1).max(1_000),
  sheets: z.array(sheet).min(1).max(20),
})

export type TaughtForm = z.output<typeof taughtForm>
export type TaughtSheet = TaughtForm['sheets'][number]
export type TaughtRows = NonNullable<TaughtSheet['rows']>
export type FieldPlace = TaughtSheet['fields'][number]
export type Mark = FieldPlace['captions'][number]

/** A taught form under the name that a person gave it. */
export type NamedForm = { readonly name: string; readonly form: TaughtForm }

/** A sheet's fields where they lie on it; of a register those of its first permit. */
export const fieldsOn = ({ fields, rows }: TaughtSheet): readonly FieldPlace[] =>
  rows === undefined
    ? fields
    : rows.fields.map((field) => ({
        ...field,
        box: { ...field.box, x: field.box.x + rows.columns[0]!, y: field.box.y + rows.from },
      }))
