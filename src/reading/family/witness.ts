import { sameValue } from '../assemble/choose.ts'
import type { PageWords } from '../page-words.ts'
import type { ReadingContext } from '../values/answers.ts'
import { lettersApart } from '../values/near-word.ts'
import type { Confirmed, Lesson } from './lesson.ts'
import { valueAt } from './read-places.ts'
import { type Recognized, recognize } from './recognize.ts'
import { anchorsOn, laidOnRow } from './rows.ts'
import type { FieldPlace, TaughtForm } from './taught-form.ts'

/** Whether the place of a field gave what was confirmed of a permit. */
export type Witness = Pick<FieldPlace, 'ask' | 'kind'> & { readonly agrees: boolean }

/** How often a field's place gave what was confirmed after the form was taken up, and how often it gave another thing. */
export type Witnessed = Pick<FieldPlace, 'ask' | 'kind'> & {
  readonly agreed: number
  readonly contradicted: number
}

/** So many confirmations must contradict a place, and such a share of all that it was held against, those that taught it too. */
const LEAST_CONTRADICTED = 2
const MOST_CONTRADICTED = 0.1

/** A field that confirmations contradict was learned wrongly, or its papers have changed: it is read no more. */
export const isDropped = (
  { papers }: Pick<FieldPlace, 'papers'>,
  { agreed, contradicted }: Witnessed,
): boolean =>
  contradicted >= LEAST_CONTRADICTED && contradicted > MOST_CONTRADICTED * (papers + agreed + contradicted)

export const witnessedOf = (
  { ask, kind }: Pick<FieldPlace, 'ask' | 'kind'>,
  all: readonly Witnessed[],
): Witnessed =>
  all.find((one) => one.ask === ask && one.kind === kind) ?? { ask, kind, agreed: 0, contradicted: 0 }

/** A form without the fields that confirmations contradict. */
export const withoutDropped = (form: TaughtForm, all: readonly Witnessed[]): TaughtForm => {
  const kept = (fields: readonly FieldPlace[]): FieldPlace[] =>
    fields.filter((field) => !isDropped(field, witnessedOf(field, all)))
  return {
    ...form,
    sheets: form.sheets.map((sheet) => ({
      ...sheet,
      fields: kept(sheet.fields),
      ...(sheet.rows ? { rows: { ...sheet.rows, fields: kept(sheet.rows.fields) } } : {}),
    })),
  }
}

/** What the permits of a leaf, as they were confirmed, say of the fields of the form that it is; one list for each. */
export function witnessesOf(
  permits: readonly Lesson[],
  form: TaughtForm,
  context: ReadingContext,
): readonly (readonly Witness[])[] {
  return permits.map(({ pages, values }) =>
    pages.flatMap((page): Witness[] => {
      const own = { ...context, misread: page.readBy === 'picture' }
      const known = recognize(page, page.words, [{ name: '', form }])
      const laid = known && permitAt(known, page, values, own)
      if (!laid) return []
      return laid.sheet.fields.flatMap((field) => {
        const agrees = agreesAt(field, page, values, laid, own)
        return agrees === null ? [] : [{ ask: field.ask, kind: field.kind, agrees }]
      })
    }),
  )
}

/** The form laid on the page, or on the permit of it whose number was confirmed. */
export function permitAt(
  known: Recognized,
  page: PageWords,
  values: readonly Confirmed[],
  context: ReadingContext,
): Recognized | null {
  const { rows } = known.sheet
  if (!rows) return known
  const number = values.find(({ ask }) => ask === 'number')?.place?.box
  const anchor =
    number &&
    anchorsOn(page, known, rows, context).find(
      ({ x, y }) => Math.abs(number.y + number.h / 2 - y) < number.h / 2 && Math.abs(number.x - x) < number.w,
    )
  return anchor ? laidOnRow(known, rows, anchor) : null
}

/** Does a place give what was confirmed? Null where nothing can be read there, or it was misread, which is no fault of the place. */
export function agreesAt(
  field: FieldPlace,
  page: PageWords,
  values: readonly Confirmed[],
  laid: Recognized,
  context: ReadingContext,
): boolean | null {
  const confirmed = values.find(({ ask, kind }) => ask === field.ask && kind === field.kind)
  const read = confirmed && valueAt(field, page, page.words, laid, context)
  if (!confirmed || !read) return null
  if (sameValue(read.value, confirmed.value)) return true
  const isFaint = context.misread && read.excerpt.confidence < SURE_SIGNS
  return isFaint || (context.misread && isMisread(String(read.value), String(confirmed.value))) ? null : false
}

/** Signs that the reader of a picture is less sure of than this speak against no place. */
const SURE_SIGNS = 0.8

/** As good as the same letters: one value, read badly. */
const isMisread = (read: string, confirmed: string): boolean =>
  lettersApart(read, confirmed) <= Math.max(1, Math.floor(confirmed.length / 4))
