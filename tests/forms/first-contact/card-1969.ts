import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

/** A file card in boxes: each box has its caption small in its corner and the value typed below it. */
export function card1969(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  sheet.text('SUBSURFACE DISPOSAL RECORD CARD', 60, 40, { face: 'Helvetica-Bold', size: 13 })
  const cell = (caption: string, value: string, x: number, y: number, w: number): void => {
    sheet.box(x, y, w, 34)
    sheet.text(caption, x + 3, y + 3, { face: 'Helvetica', size: 7.5 })
    sheet.text(value, x + 6, y + 17)
  }
  const band = (words: string, y: number): void =>
    sheet.text(words, 62, y, { face: 'Helvetica-Bold', size: 9 })
  cell('PERMIT NUMBER', v('/number'), 60, 64, 110)
  cell('PARCEL NUMBER', v('/parcelNumber'), 170, 64, 140)
  cell('ISSUED', v('/issuedOn'), 310, 64, 100)
  cell('APPROVED', v('/approvedOn'), 410, 64, 100)
  cell('PROPERTY ADDRESS', v('/address'), 60, 98, 250)
  cell('BEDROOMS', v('/bedrooms'), 310, 98, 80)
  cell('PERC. RATE, MIN. PER INCH', v('/percRateMpi'), 390, 98, 120)
  const t = `/components/${sheet.find('tank')}`
  band('SEPTIC TANK', 142)
  cell('CAPACITY (GAL.)', v(`${t}/capacity`).replace(' gal', ''), 60, 154, 110)
  cell('MATERIAL', MATERIAL_WORDS[v(`${t}/material`)] ?? '', 170, 154, 140)
  cell('INSIDE LENGTH', v(`${t}/length`), 310, 154, 100)
  cell('INSIDE WIDTH', v(`${t}/width`), 410, 154, 100)
  cell('LIQUID DEPTH', v(`${t}/liquidDepth`), 60, 188, 110)
  cell('DISTANCE TO CORNER A', v(`${t}/tie/a`), 170, 188, 140)
  cell('DISTANCE TO CORNER B', v(`${t}/tie/b`), 310, 188, 200)
  const pit = sheet.find('seepage-pit')
  const f = `/components/${pit >= 0 ? pit : sheet.find('trench', 'bed')}`
  if (pit >= 0) {
    band('SEEPAGE PITS', 232)
    cell('NUMBER', v(`${f}/count`), 60, 244, 110)
    cell('DIAMETER', v(`${f}/diameter`), 170, 244, 140)
    cell('EFFECTIVE DEPTH', v(`${f}/effectiveDepth`), 310, 244, 100)
  } else {
    const trench = sheet.find('trench') >= 0
    band(trench ? 'DISPOSAL TRENCHES' : 'DISPOSAL BED', 232)
    if (trench) cell('NUMBER', v(`${f}/count`), 60, 244, 110)
    cell(trench ? 'LENGTH OF EACH' : 'LENGTH', v(`${f}/length`), 170, 244, 140)
    cell('WIDTH', v(`${f}/width`), 310, 244, 100)
    cell('STONE BELOW PIPE', v(`${f}/effectiveDepth`), 410, 244, 100)
  }
  if (sheet.has('/reference/a')) {
    cell('CORNER A IS', v('/reference/a'), 60, 290, 200)
    cell('CORNER B IS', v('/reference/b'), 260, 290, 250)
  }
  cell('INSTALLED BY', sheet.truth.noise.installer, 60, 330, 250)
  cell('WELL DEPTH', sheet.truth.noise.wellDepth, 310, 330, 200)
}
