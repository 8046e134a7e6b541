import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

/** Captions printed under the lines they belong to; tank and field side by side. */
export function sheet1972(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  sheet.text('SEWAGE DISPOSAL INSTALLATION RECORD', 170, 40, { face: 'Times-Bold', size: 14 })
  sheet.text('County of Quillback, Sanitation Division', 200, 58, { face: 'Times-Roman', size: 10 })
  const blank = (caption: string, value: string, x: number, y: number, width: number): void => {
    sheet.text(value, x + 6, y)
    sheet.rule(x, y + 12, x + width)
    sheet.text(caption, x, y + 14, { face: 'Times-Roman', size: 8 })
  }
  blank('Permit No.', v('/number'), 50, 90, 110)
  blank('Parcel No.', v('/parcelNumber'), 190, 90, 140)
  blank('Date of issue', v('/issuedOn'), 360, 90, 140)
  blank('Address of property', v('/address'), 50, 130, 260)
  blank('Bedrooms', v('/bedrooms'), 340, 130, 60)
  blank('Perc rate (min/in)', v('/percRateMpi'), 430, 130, 90)
  const kind = v('/kind')
  sheet.text('Work:', 50, 172, { face: 'Times-Roman' })
  ;(['new', 'repair', 'alteration'] as const).forEach((option, index) => {
    sheet.text(
      option === 'new' ? 'New' : option === 'repair' ? 'Repair' : 'Alteration',
      100 + index * 110,
      172,
      { face: 'Times-Roman' },
    )
    sheet.text(kind === option ? '[X]' : '[ ]', 160 + index * 110, 172)
  })
  sheet.text('TANK', 120, 205, { face: 'Times-Bold', size: 12 })
  sheet.text('FIELD', 400, 205, { face: 'Times-Bold', size: 12 })
  const t = `/components/${sheet.find('tank')}`
  blank('Capacity, gals.', v(`${t}/capacity`).replace(' gal', ''), 50, 228, 90)
  blank('Material', MATERIAL_WORDS[v(`${t}/material`)] ?? '', 160, 228, 110)
  blank('Inside length', v(`${t}/length`), 50, 268, 70)
  blank('Inside width', v(`${t}/width`), 135, 268, 70)
  blank('Liquid depth', v(`${t}/liquidDepth`), 220, 268, 70)
  blank('Dist. from A', v(`${t}/tie/a`), 50, 308, 80)
  blank('Dist. from B', v(`${t}/tie/b`), 150, 308, 80)
  const pit = sheet.find('seepage-pit')
  const f = `/components/${pit >= 0 ? pit : sheet.find('trench', 'bed')}`
  if (pit >= 0) {
    blank('Number of pits', v(`${f}/count`), 330, 228, 90)
    blank('Diameter', v(`${f}/diameter`), 440, 228, 90)
    blank('Depth below inlet', v(`${f}/effectiveDepth`), 330, 268, 90)
  } else {
    if (sheet.find('trench') >= 0) blank('Number of trenches', v(`${f}/count`), 330, 228, 90)
    blank('Length, each', v(`${f}/length`), 440, 228, 90)
    blank('Width', v(`${f}/width`), 330, 268, 90)
    blank('Stone under pipe', v(`${f}/effectiveDepth`), 440, 268, 90)
  }
  if (sheet.has('/reference/a')) {
    blank('Point A', v('/reference/a'), 50, 360, 190)
    blank('Point B', v('/reference/b'), 260, 360, 190)
    blank('A to B', v('/reference/baseline'), 470, 360, 60)
  }
  blank('Installer', sheet.truth.noise.installer, 50, 410, 200)
  blank('Date of final inspection', v('/approvedOn'), 300, 410, 160)
}
