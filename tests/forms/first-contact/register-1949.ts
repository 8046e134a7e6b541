import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

/** A leaf of a bound register: ruled columns with narrow headings on two lines, one entry to a leaf, ties in a margin. */
export function register1949(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  const heading = { face: 'Times-Roman', size: 9 } as const
  sheet.text('REGISTER OF PRIVATE SEWERAGE', 190, 42, { face: 'Times-Bold', size: 13 })
  const t = `/components/${sheet.find('tank')}`
  const column = (lines: readonly [string, string], value: string, x: number, y: number): void => {
    sheet.text(lines[0], x, y, heading)
    sheet.text(lines[1], x, y + 11, heading)
    sheet.text(value, x, y + 30)
  }
  sheet.rule(40, 82, 572)
  column(['Permit', 'Number'], v('/number'), 44, 86)
  column(['Date', 'Issued'], v('/issuedOn'), 120, 86)
  column(['Tax', 'Parcel'], v('/parcelNumber'), 250, 86)
  column(['Street', 'Address'], v('/address'), 370, 86)
  sheet.rule(40, 132, 572)
  column(['No. of', 'Bedrooms'], v('/bedrooms'), 44, 140)
  column(['Kind', 'of Work'], v('/kind') === 'new' ? 'New' : cap(v('/kind')), 120, 140)
  column(['Septic Tank', 'Gallons'], v(`${t}/capacity`).replace(' gal', ''), 215, 140)
  column(['Tank', 'Built of'], MATERIAL_WORDS[v(`${t}/material`)] ?? '', 305, 140)
  column(['Tank Liquid', 'Depth'], v(`${t}/liquidDepth`), 425, 140)
  sheet.rule(40, 186, 572)
  const pit = sheet.find('seepage-pit')
  const f = `/components/${pit >= 0 ? pit : sheet.find('trench', 'bed')}`
  if (pit >= 0) {
    column(['Seepage Pits', 'How Many'], v(`${f}/count`), 44, 194)
    column(['Pit', 'Diameter'], v(`${f}/diameter`), 150, 194)
    column(['Pit Depth', 'Below Inlet'], v(`${f}/effectiveDepth`), 250, 194)
  } else {
    const name = sheet.find('trench') >= 0 ? 'Trench' : 'Bed'
    if (name === 'Trench') column(['Trenches', 'How Many'], v(`${f}/count`), 44, 194)
    column([name, 'Length'], v(`${f}/length`), 150, 194)
    column([name, 'Width'], v(`${f}/width`), 250, 194)
    column(['Gravel', 'Under Tile'], v(`${f}/effectiveDepth`), 350, 194)
  }
  column(['Date', 'Approved'], v('/approvedOn'), 450, 194)
  sheet.rule(40, 240, 572)
  if (sheet.has('/reference/a')) {
    sheet.text('Location of tank cover:', 44, 262, { face: 'Times-Roman', size: 10 })
    sheet.text(`${v(`${t}/tie/a`)} from A, ${v(`${t}/tie/b`)} from B`, 160, 262)
    sheet.text(`A = ${v('/reference/a')}`, 44, 282)
    sheet.text(`B = ${v('/reference/b')}`, 300, 282)
  }
  sheet.text(`Put in by ${sheet.truth.noise.installer}`, 44, 312)
}

const cap = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
