import type { PDFPageProxy } from 'pdfjs-dist'
import type { TextItem } from 'pdfjs-dist/types/src/display/api.d.ts'
import type { Picture } from '../../src/scan/child/image/picture.ts'
import { prepared } from '../../src/scan/child/image/prepare.ts'
import { GRADES, type Grade } from './damage.ts'
import { dice } from './dice.ts'

/** A text as it is printed, and where it lies on the scan made ready, in its points. */
export type PrintedLine = {
  readonly text: string
  readonly box: { readonly x: number; readonly y: number; readonly w: number; readonly h: number }
}

/** Height of letters above and below the base line, in sizes of the type; and what a box is let out by, in its height. */
const [ABOVE, BELOW, LET_OUT] = [0.74, 0.2, 0.2]

/**
 * Where each text of a print lies on its damaged scan, once that is made ready: the scan's turn is its seed's first
 * throw (`damage.ts`), the rest is what the clean-up turned it back by.
 */
export async function printedLines(
  print: PDFPageProxy,
  scan: Picture,
  { grade, seed, page }: { readonly grade: Grade; readonly seed: number; readonly page: number },
): Promise<{ readonly picture: Picture; readonly scanned: Picture; readonly lines: PrintedLine[] }> {
  const { picture, scanned, degrees } = await prepared(scan)
  const angle = (dice(seed * 1009 + page).unit() * 2 - 1) * GRADES[grade].skew
  const turn = ((angle - degrees) * Math.PI) / 180
  const size = print.getViewport({ scale: 1 })
  const perPoint = picture.width / size.width
  const grown = coverScale(size.width, size.height, (angle * Math.PI) / 180)
  const { items } = await print.getTextContent()
  const lines = items.flatMap((item): PrintedLine[] => {
    if (!('str' in item) || item.str.trim() === '') return []
    const { str, transform, width } = item as TextItem
    const [x, y, type] = [
      transform[4] as number,
      size.height - (transform[5] as number),
      Math.abs(transform[3] as number),
    ]
    const corners = [
      [x, y - ABOVE * type],
      [x + width, y - ABOVE * type],
      [x, y + BELOW * type],
      [x + width, y + BELOW * type],
    ].map(([cx, cy]) => turned(cx! - size.width / 2, cy! - size.height / 2, turn, grown))
    const xs = corners.map(([cx]) => (cx + size.width / 2) * perPoint)
    const ys = corners.map(([, cy]) => (cy + size.height / 2) * perPoint)
    const [left, top] = [Math.min(...xs), Math.min(...ys)]
    const [w, h] = [Math.max(...xs) - left, Math.max(...ys) - top]
    const out = h * LET_OUT
    return [{ text: str.trim(), box: { x: left - out, y: top - out, w: w + 2 * out, h: h + 2 * out } }]
  })
  return { picture, scanned, lines }
}

const turned = (x: number, y: number, angle: number, grown: number): [number, number] => [
  grown * (x * Math.cos(angle) - y * Math.sin(angle)),
  grown * (x * Math.sin(angle) + y * Math.cos(angle)),
]

/** A page turned and fitted so that its old frame is covered is grown or shrunk by this much. */
function coverScale(width: number, height: number, angle: number): number {
  const [c, s] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))]
  return Math.max(width / (width * c + height * s), height / (width * s + height * c))
}
