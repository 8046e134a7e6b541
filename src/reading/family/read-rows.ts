import { readingsOf } from '../association/statements.ts'
import type { PageWords } from '../page-words.ts'
import type { PageReadings } from '../statement.ts'
import type { ReadingContext } from '../values/answers.ts'
import { withPlaces } from './read-places.ts'
import type { Recognized } from './recognize.ts'
import { anchorsOn, inRows, laidOnRow } from './rows.ts'

/** So many values at their places make a permit where no link tells of one; so many told of something, one without a number. */
const LEAST_AT_PLACES = 3

/**
 * A page of a form with several permits: one for each number at its column, with the values that lie about it. Null where
 * none is found: then the page is read as any other.
 */
export function readByRows(
  page: PageWords,
  form: Recognized,
  context: ReadingContext,
): PageReadings[] | null {
  const { rows } = form.sheet
  const anchors = rows ? anchorsOn(page, form, rows, context) : []
  if (!rows || anchors.length === 0) return null
  const values = inRows(page.links?.values ?? [], anchors, form, rows)
  const read = readingsOf({ ...page, links: { model: page.links?.model ?? '', values } }, context)
  const known = anchors.flatMap((anchor, nth): PageReadings[] => {
    const own = read.find(({ permit }) => permit === nth) ?? { statements: [], mentions: [] }
    const whole = withPlaces(page, page.words, own, laidOnRow(form, rows, anchor), context)
    const placed = whole.statements.length - own.statements.length
    return anchor.linked || placed >= LEAST_AT_PLACES ? [whole] : []
  })
  const others = read.filter(
    ({ permit, statements }) =>
      permit >= anchors.length &&
      (statements.length >= LEAST_AT_PLACES || statements.some(({ ask }) => ask === 'number')),
  )
  const first = ({ statements }: PageReadings): number => Math.min(...statements.map(({ order }) => order))
  return [...known, ...others].sort((a, b) => first(a) - first(b))
}
