import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist'
import type { PageWords, Word } from '../../reading/page-words.ts'
import type { Picture } from './image/picture.ts'
import { prepared } from './image/prepare.ts'
import { withStrikes } from './image/strikes.ts'
import { tickBoxes } from './image/tick-boxes.ts'
import { pagePicture } from './page-picture.ts'
import { findLines, type LineBox } from './readers/find-lines.ts'
import { readStrips } from './readers/read-strips.ts'
import { type Readers, readers } from './readers/readers.ts'
import { covers, sideBySide } from './readers/side-by-side.ts'
import { GENERAL_SPACING, OWN_SPACING, wordsOf } from './readers/signs-to-words.ts'
import { stripsOf } from './readers/strip.ts'
import { liesOnItsSide, standsOnItsHead, type Turn, turnedBy } from './upright.ts'

/** Fineness that both readers read best at (trial at 150 to 400), and the most points of any page. */
const DOTS_PER_INCH = 300
const MAX_PIXELS = 2.4e7
/** Ink inside a box from which it counts as ticked; from trial on graded damage. */
const TICKED = 0.12

/** The words of a page by its picture, through two readers that know nothing of each other. */
export async function readPicture(pdf: PDFDocumentProxy, page: PDFPageProxy): Promise<PageWords> {
  const shown = await pagePicture(pdf, page, DOTS_PER_INCH, MAX_PIXELS)
  const both = await readers()
  const { level, scanned, turn, degrees, boxes } = await upright(shown, both)
  const size = page.getViewport({ scale: 1 })
  const [widthPt, heightPt] =
    turn === 90 || turn === 270 ? [size.height, size.width] : [size.width, size.height]
  const ticks = tickBoxes(level, level.width / (widthPt / 72)).map(
    ({ box, inked }): Word => ({ text: inked > TICKED ? '[X]' : '[ ]', box, confidence: sureOfTick(inked) }),
  )
  // The reader of our own was trained on scans as they come, the general one reads them better cleaned.
  const [own, general] = await Promise.all([
    stripsOf(scanned, boxes).then((strips) => readStrips(both.own, strips)),
    stripsOf(level, boxes).then((strips) => readStrips(both.general, strips)),
  ])
  const { words, secondWords } = sideBySide(
    own.flatMap((line) => wordsOf(line, level, OWN_SPACING)),
    general.flatMap((line) => wordsOf(line, level, GENERAL_SPACING)),
  )
  // What lies on a box to tick is its frame or its cross, read as a letter.
  const onPage = (words: readonly Word[]): Word[] =>
    [...words.filter(({ box }) => !ticks.some((tick) => covers(tick.box, box))), ...ticks].map(rounded)
  return {
    page: page.pageNumber,
    widthPt,
    heightPt,
    turn,
    levelDegrees: degrees === 0 ? 0 : -degrees,
    readBy: 'picture',
    words: onPage(withStrikes(level, words)),
    secondWords: onPage(withStrikes(level, secondWords)),
  }
}

/** The page made ready, the way up found by where its lines lie and what they look like. */
async function upright(
  shown: Picture,
  { models }: Readers,
): Promise<{ level: Picture; scanned: Picture; turn: Turn; degrees: number; boxes: LineBox[] }> {
  let turn: Turn = 0
  let made = await prepared(shown)
  let boxes = await findLines(models.finder, made.picture)
  if (liesOnItsSide(boxes)) {
    turn = 90
    made = await prepared(await turnedBy(shown, turn))
    boxes = await findLines(models.finder, made.picture)
  }
  if (await standsOnItsHead(models, made.picture, boxes)) {
    turn = turn === 90 ? 270 : 180
    made = await prepared(await turnedBy(shown, turn))
    boxes = await findLines(models.finder, made.picture)
  }
  return { level: made.picture, scanned: made.scanned, turn, degrees: made.degrees, boxes }
}

const sureOfTick = (inked: number): number => Math.min(0.99, 0.6 + Math.abs(inked - TICKED) * 4)

const rounded = ({ text, confidence, box: { x, y, w, h }, struck }: Word): Word => ({
  ...(struck ? { struck } : {}),
  text,
  confidence: +confidence.toFixed(3),
  box: { x: +x.toFixed(5), y: +y.toFixed(5), w: +w.toFixed(5), h: +h.toFixed(5) },
})
