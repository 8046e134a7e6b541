import type { Box } from '../../records/source.ts'
import type { PageWords, Word } from '../page-words.ts'
import { alike, plain } from './alike.ts'
import { lineUp, type Sized } from './line-up.ts'
import type { Mark, NamedForm, TaughtSheet } from './taught-form.ts'

/** A sheet of a taught form, laid on a page. */
export type Recognized = {
  readonly name: string
  readonly sheet: TaughtSheet
  /** A box of the sheet, on the page. */
  readonly onto: (box: Box) => Box
  /** Words of the page that are the form's own print. */
  readonly printed: ReadonlySet<Word>
  /** The share of the form's printed words that are there. */
  readonly share: number
}

/** What was misread to the bone is missing on bad scans; on another form nearly all is. */
const LEAST_SHARE = 0.4
const LEAST_MARKS = 8
const GLANCE = 0.2
/** Left ends of one printed word, in heights of the page. */
const AT_ITS_PLACE = 0.015

/** The taught form that a page is, by the printed words that it has at their places; null where none fits. */
export function recognize(
  page: PageWords,
  words: readonly Word[],
  forms: readonly NamedForm[],
): Recognized | null {
  let best: Recognized | null = null
  for (const { name, form } of forms)
    for (const sheet of form.sheets) {
      const laid = laidOn(page, words, name, sheet)
      if (laid && (!best || laid.share > best.share)) best = laid
    }
  return best
}

/** Some of a form's words are read right even where most are not: a glance saves laying every form on every page. */
function mayBe({ marks }: TaughtSheet, words: readonly Word[]): boolean {
  const there = new Set(words.map(({ text }) => plain(text)))
  return marks.filter(({ text }) => there.has(plain(text))).length >= GLANCE * marks.length
}

function laidOn(
  page: PageWords,
  words: readonly Word[],
  name: string,
  sheet: TaughtSheet,
): Recognized | null {
  if (!mayBe(sheet, words)) return null
  const fit = lineUp(sheet.marks, sheet, words, page)
  if (!fit) return null
  const printed = new Set<Word>()
  let seen = 0
  for (const mark of sheet.marks) {
    const word = seenAt(mark, fit.onto(mark.box), words, page)
    if (!word) continue
    seen += 1
    printed.add(word)
  }
  const share = seen / sheet.marks.length
  if (seen < LEAST_MARKS || share < LEAST_SHARE) return null
  return { name, sheet, onto: fit.onto, printed, share }
}

/** The word of a page that is a printed word at its place, if it is there. */
export function seenAt(mark: Mark, at: Box, words: readonly Word[], size: Sized): Word | undefined {
  const text = plain(mark.text)
  return words.find(({ text: other, box }) => {
    const down = Math.abs(box.y + box.h / 2 - (at.y + at.h / 2))
    const across = (Math.abs(box.x - at.x) * size.widthPt) / size.heightPt
    return down < AT_ITS_PLACE && across < AT_ITS_PLACE && alike(text, plain(other))
  })
}
