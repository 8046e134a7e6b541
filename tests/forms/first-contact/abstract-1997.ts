import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

/** An abstract of a permit: two columns of pairs, bold questions over plain answers in turn, the parts in a table. */
export function abstract1997(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  sheet.text('Wastewater Permit Abstract', 60, 44, { face: 'Times-Bold', size: 15 })
  const pair = (question: string, answer: string, x: number, y: number): void => {
    sheet.text(`${question}:`, x, y, { face: 'Times-Bold', size: 10 })
    sheet.text(answer, x + 110, y)
  }
  pair('Permit', v('/number'), 60, 84)
  pair('Parcel', v('/parcelNumber'), 320, 84)
  pair('Issued', v('/issuedOn'), 60, 102)
  pair('Final approval', v('/approvedOn'), 320, 102)
  pair('Site', v('/address'), 60, 120)
  pair('Permit type', v('/kind') === 'new' ? 'New' : v('/kind'), 320, 120)
  pair('Bedrooms', v('/bedrooms'), 60, 138)
  pair('Daily flow', `${v('/designFlowGpd')} gpd`, 320, 138)
  pair('Perc', `${v('/percRateMpi')} min/in`, 60, 156)
  pair('Soil', v('/soilTexture'), 320, 156)
  const columns = [60, 190, 300, 400, 490]
  const row = (cells: readonly string[], y: number, face?: 'Times-Bold'): void =>
    cells.forEach((cell, index) => {
      sheet.text(cell, columns[index]!, y, face ? { face, size: 10 } : {})
    })
  const t = `/components/${sheet.find('tank')}`
  row(['Component', 'Size', 'Length', 'Width', 'Depth'], 196, 'Times-Bold')
  sheet.rule(60, 210, 552)
  row(
    [
      `Septic tank, ${MATERIAL_WORDS[v(`${t}/material`)]}`,
      v(`${t}/capacity`),
      v(`${t}/length`),
      v(`${t}/width`),
      v(`${t}/liquidDepth`),
    ],
    216,
  )
  const trench = sheet.find('trench')
  const bed = sheet.find('bed')
  const pit = sheet.find('seepage-pit')
  if (trench >= 0)
    row(
      [
        `${v(`/components/${trench}/count`)} trenches`,
        '',
        v(`/components/${trench}/length`),
        v(`/components/${trench}/width`),
      ],
      234,
    )
  if (bed >= 0) row(['Leaching bed', '', v(`/components/${bed}/length`), v(`/components/${bed}/width`)], 234)
  if (pit >= 0)
    sheet.text(
      `${v(`/components/${pit}/count`)} seepage pits, ${v(`/components/${pit}/diameter`)} diameter, ${v(`/components/${pit}/effectiveDepth`)} below inlet`,
      60,
      234,
    )
  if (sheet.has('/reference/a')) {
    pair('Corner A', v('/reference/a'), 60, 276)
    pair('Corner B', v('/reference/b'), 320, 276)
    pair('Tank ties', `${v(`${t}/tie/a`)} from A, ${v(`${t}/tie/b`)} from B`, 60, 294)
  }
  pair('Contractor', sheet.truth.noise.installer, 60, 324)
}
