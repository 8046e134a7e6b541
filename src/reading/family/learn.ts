import type { Box } from '../../records/source.ts'
import type { PageWords } from '../page-words.ts'
import type { ReadingContext } from '../values/answers.ts'
import { fieldPlaces, type Laid } from './field-places.ts'
import { type LaidLeaf, rowsFrom } from './learn-rows.ts'
import type { Confirmed, Lesson } from './lesson.ts'
import { type LineUp, lineUp } from './line-up.ts'
import { marksOf } from './marks.ts'
import { linesOf } from './places-of.ts'
import { type Recognized, recognize } from './recognize.ts'
import type { FieldPlace, TaughtForm, TaughtSheet } from './taught-form.ts'
import { agreesAt, permitAt } from './witness.ts'

/** So many confirmed papers of one form make one known: with fewer, chance looks like print. */
export const LEAST_PAPERS = 3
/** A form that prints less than this can't be told from another. */
const LEAST_MARKS = 12

/**
 * What papers of one form teach: the words that they all print where they all print them, and where each value that was
 * confirmed can be read paper after paper; on sheets of several permits, where it lies about the permit's number. Null
 * where they share too little to be one form. A field is kept only if its place gives what was confirmed on every paper
 * that it can be read from.
 */
export function learnForm(lessons: readonly Lesson[], context: ReadingContext): TaughtForm | null {
  const leaves = leavesOf(lessons)
  if (leaves.length < LEAST_PAPERS) return null
  const reference = leaves[referenceAmong(leaves)]!
  const sheets = leaves.some(({ permits }) => permits.length > 1)
    ? [learnRegister(reference.pages[0]!, leaves, context)]
    : reference.pages.map((page, index) => learnSheet(page, index, leaves, context))
  const known = sheets.filter((sheet) => sheet !== null)
  if (known.every(({ fields, rows }) => fields.length === 0 && !rows)) return null
  return { version: 1, papers: leaves.length, sheets: known }
}

/** A paper and what was confirmed of each of its permits. */
type Leaf = { readonly pages: readonly PageWords[]; readonly permits: (readonly Confirmed[])[] }

export function leavesOf(lessons: readonly Lesson[]): readonly Leaf[] {
  const leaves = new Map<string, Leaf>()
  for (const { leaf, pages, values } of lessons) {
    const known = leaves.get(leaf)
    if (known) known.permits.push(values)
    else leaves.set(leaf, { pages, permits: [values] })
  }
  return [...leaves.values()]
}

/** The best read paper makes the sheet that the others are laid on: its place among them. */
export const referenceAmong = (papers: readonly Pick<Lesson, 'pages'>[]): number => {
  const sure = papers.map(surety)
  return sure.indexOf(Math.max(...sure))
}

const surety = ({ pages }: Pick<Lesson, 'pages'>): number =>
  pages.flatMap(({ words }) => words).reduce((sum, { confidence }) => sum + confidence ** 2, 0)

const laidOn = (reference: PageWords, page: PageWords): LineUp | null =>
  page === reference ? SELF : lineUp(page.words, page, reference.words, reference)

function learnSheet(
  reference: PageWords,
  index: number,
  leaves: readonly Leaf[],
  context: ReadingContext,
): TaughtSheet | null {
  const laid = leaves.flatMap(({ pages, permits }): Laid[] => {
    const page = pages[index]
    const fit = page && laidOn(reference, page)
    return page && fit ? [{ page, values: permits[0]!, onto: fit.onto, lines: linesOf(page) }] : []
  })
  const sheet = sheetWith(reference, laid)
  if (!sheet) return null
  const papers = laid.flatMap((paper): Recognizing[] => {
    const recognized = recognizeOn(paper.page, sheet)
    return recognized ? [{ ...paper, recognized }] : []
  })
  return { ...sheet, fields: provenOf(fieldPlaces(laid, sheet.marks, context), papers, context) }
}

/** Registers, and cards side by side: by the first page of each, for a permit is told on one. */
function learnRegister(
  reference: PageWords,
  leaves: readonly Leaf[],
  context: ReadingContext,
): TaughtSheet | null {
  const laid = leaves.flatMap(({ pages, permits }): LaidLeaf[] => {
    const fit = laidOn(reference, pages[0]!)
    return fit ? [{ page: pages[0]!, permits, onto: fit.onto, lines: linesOf(pages[0]!) }] : []
  })
  const sheet = sheetWith(reference, laid)
  const rows = sheet && rowsFrom(laid, context)
  if (!rows) return null
  const papers = laid.flatMap((leaf) => permitsOf(leaf, { ...sheet, rows }, context))
  const fields = provenOf(rows.fields, papers, context)
  return fields.length === 0 ? null : { ...sheet, rows: { ...rows, fields } }
}

/** Each permit of a leaf with the form laid on it, told by the number that was confirmed. */
function permitsOf(
  { page, permits, onto }: LaidLeaf,
  sheet: TaughtSheet,
  context: ReadingContext,
): Recognizing[] {
  const form = recognizeOn(page, sheet)
  if (!form) return []
  const misread = page.readBy === 'picture'
  return permits.flatMap((values): Recognizing[] => {
    const recognized = permitAt(form, page, values, { ...context, misread })
    return recognized ? [{ page, values, onto, lines: [], recognized }] : []
  })
}

/** The sheet by its print alone; null where papers are too few or print too little. */
function sheetWith(reference: PageWords, laid: readonly Pick<Laid, 'page' | 'onto'>[]): TaughtSheet | null {
  if (laid.length < LEAST_PAPERS) return null
  const marks = marksOf(reference, laid)
  if (marks.length < LEAST_MARKS) return null
  const { widthPt, heightPt } = reference
  return { widthPt, heightPt, marks: [...marks], fields: [] }
}

const provenOf = (
  fields: readonly FieldPlace[],
  papers: readonly Recognizing[],
  context: ReadingContext,
): FieldPlace[] =>
  fields.flatMap((field) => {
    const right = proven(field, papers, context)
    return right === null ? [] : [{ ...field, papers: right }]
  })

const SELF: LineUp = { onto: (box: Box) => box, pairs: 0 }

type Recognizing = Laid & { readonly recognized: Recognized }

/** On how many of the papers the place gives what was confirmed; null where it once gives something else. */
function proven(field: FieldPlace, papers: readonly Recognizing[], context: ReadingContext): number | null {
  const said = papers.map(({ page, values, recognized }) =>
    agreesAt(field, page, values, recognized, { ...context, misread: page.readBy === 'picture' }),
  )
  const right = said.filter((agrees) => agrees === true).length
  return right < 2 || said.includes(false) ? null : right
}

const recognizeOn = (page: PageWords, sheet: TaughtSheet): Recognized | null =>
  recognize(page, page.words, [{ name: '', form: { version: 1, papers: 1, sheets: [sheet] } }])
