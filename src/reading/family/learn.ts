import type { Box } from '../../records/source.ts'
import { sameValue } from '../assemble/choose.ts'
import type { PageWords } from '../page-words.ts'
import type { ReadingContext } from '../values/answers.ts'
import { fieldPlaces, type Laid } from './field-places.ts'
import type { Lesson } from './lesson.ts'
import { type LineUp, lineUp } from './line-up.ts'
import { marksOf } from './marks.ts'
import { linesOf } from './places-of.ts'
import { valueAt } from './read-places.ts'
import { type Recognized, recognize } from './recognize.ts'
import type { FieldPlace, TaughtForm, TaughtSheet } from './taught-form.ts'

/** So many confirmed papers of one form make one known: with fewer, chance looks like print. */
export const LEAST_PAPERS = 3
/** A form that prints less than this can't be told from another. */
const LEAST_MARKS = 12

/**
 * What papers of one form teach: the words that they all print where they all print them, and where each value that was
 * confirmed can be read paper after paper. Null where they share too little to be one form. A field is kept only if its
 * place gives what was confirmed on every paper that it can be read from.
 */
export function learnForm(lessons: readonly Lesson[], context: ReadingContext): TaughtForm | null {
  if (lessons.length < LEAST_PAPERS) return null
  const reference = lessons[referenceAmong(lessons)]!
  const sheets = reference.pages.flatMap((page, index) => {
    const sheet = learnSheet(page, index, lessons, context)
    return sheet ? [sheet] : []
  })
  if (sheets.length === 0 || sheets.every(({ fields }) => fields.length === 0)) return null
  return { version: 1, papers: lessons.length, sheets }
}

/** The best read paper makes the sheet that the others are laid on: its place among them. */
export const referenceAmong = (lessons: readonly Lesson[]): number => {
  const sure = lessons.map(surety)
  return sure.indexOf(Math.max(...sure))
}

const surety = ({ pages }: Lesson): number =>
  pages.flatMap(({ words }) => words).reduce((sum, { confidence }) => sum + confidence ** 2, 0)

function learnSheet(
  reference: PageWords,
  index: number,
  lessons: readonly Lesson[],
  context: ReadingContext,
): TaughtSheet | null {
  const laid = lessons.flatMap((lesson): Laid[] => {
    const page = lesson.pages[index]
    const fit = page && (page === reference ? SELF : lineUp(page.words, page, reference.words, reference))
    return page && fit ? [{ page, values: lesson.values, onto: fit.onto, lines: linesOf(page) }] : []
  })
  if (laid.length < LEAST_PAPERS) return null
  const marks = marksOf(reference, laid)
  if (marks.length < LEAST_MARKS) return null
  const { widthPt, heightPt } = reference
  const sheet: TaughtSheet = { widthPt, heightPt, marks: [...marks], fields: [] }
  const papers = laid.flatMap((paper): Recognizing[] => {
    const recognized = recognizeOn(paper.page, sheet)
    return recognized ? [{ ...paper, recognized }] : []
  })
  const fields = fieldPlaces(laid, marks, context).flatMap((field) => {
    const right = proven(field, papers, context)
    return right === null ? [] : [{ ...field, papers: right }]
  })
  return { ...sheet, fields }
}

const SELF: LineUp = { onto: (box: Box) => box, pairs: 0 }

type Recognizing = Laid & { readonly recognized: Recognized }

/** On how many of the papers the place gives what was confirmed; null where it once gives something else. */
function proven(field: FieldPlace, papers: readonly Recognizing[], context: ReadingContext): number | null {
  let right = 0
  for (const { page, values, recognized } of papers) {
    const confirmed = values.find(({ ask, kind }) => ask === field.ask && kind === field.kind)
    if (!confirmed) continue
    const read = valueAt(field, page, page.words, recognized, {
      ...context,
      misread: page.readBy === 'picture',
    })
    if (read === null) continue
    if (sameValue(read.value, confirmed.value)) right += 1
    // A figure that the reader of the picture got wrong is no fault of the place.
    else if (page.readBy === 'text-layer' || !isMisread(String(read.value), String(confirmed.value)))
      return null
  }
  return right >= 2 ? right : null
}

const recognizeOn = (page: PageWords, sheet: TaughtSheet): Recognized | null =>
  recognize(page, page.words, [{ name: '', form: { version: 1, papers: 1, sheets: [sheet] } }])

/** As long, and most of its letters the same: one value, read badly. */
function isMisread(read: string, confirmed: string): boolean {
  if (Math.abs(read.length - confirmed.length) > 2) return false
  const shared = [...read].filter((letter) => confirmed.includes(letter)).length
  return shared >= 0.5 * read.length
}
