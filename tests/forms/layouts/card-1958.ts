import type { Sheet } from '../sheet.ts'
import { KIND_WORDS, MATERIAL_WORDS } from './words.ts'

/** A typed index card: capitals of one pitch, dot leaders, the ties as a drawing writes them. */
export function card1958(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer).toUpperCase()
  let y = 60
  const line = (text: string, gap = 15): void => {
    sheet.text(text, 50, y)
    y += gap
  }
  sheet.text('QUILLBACK COUNTY HEALTH DEPARTMENT', 150, 36)
  const columns = (left: string, right: string): void => {
    sheet.text(left, 50, y)
    sheet.text(right, 330, y)
    y += 15
  }
  columns(`PERMIT NO. ${v('/number')}`, `PARCEL ${v('/parcelNumber')}`)
  columns(`LOCATION ${v('/address')}`, `BEDROOMS ${v('/bedrooms')}`)
  columns(
    `DATE ISSUED ${v('/issuedOn')}`,
    `TYPE OF PERMIT ${(KIND_WORDS[sheet.value('/kind')] ?? '').toUpperCase()}`,
  )
  columns(`SOIL ${v('/soilTexture')}`, `PERC RATE ${v('/percRateMpi')} MIN/IN`)
  columns(`INSTALLER ${sheet.truth.noise.installer.toUpperCase()}`, `FEE ${sheet.truth.noise.fee}`)
  y += 8
  const tank = sheet.find('tank')
  const t = `/components/${tank}`
  line('SEPTIC TANK')
  line(`  CAPACITY ....... ${v(`${t}/capacity`)}`)
  line(`  MATERIAL ....... ${(MATERIAL_WORDS[sheet.value(`${t}/material`)] ?? '').toUpperCase()}`)
  line(`  SIZE ........... ${v(`${t}/length`)} X ${v(`${t}/width`)} X ${v(`${t}/liquidDepth`)} LIQUID DEPTH`)
  line(`  TIES ........... A-${v(`${t}/tie/a`)} B-${v(`${t}/tie/b`)}`)
  const sewer = sheet.find('building-sewer')
  if (sewer >= 0)
    line(
      `BUILDING SEWER     ${v(`/components/${sewer}/pipeDiameter`)} ${(MATERIAL_WORDS[sheet.value(`/components/${sewer}/material`)] ?? '').toUpperCase()}`,
    )
  const box = sheet.find('distribution-box')
  if (box >= 0)
    line(
      `DIST. BOX          CONCRETE   A-${v(`/components/${box}/tie/a`)} B-${v(`/components/${box}/tie/b`)}${sheet.value(`/components/${box}/material`) && ''}`,
    )
  const pit = sheet.find('seepage-pit')
  if (pit >= 0) {
    const p = `/components/${pit}`
    line('SEEPAGE PITS')
    line(`  NO. OF PITS .... ${v(`${p}/count`)}`)
    line(`  DIAMETER ....... ${v(`${p}/diameter`)}`)
    line(`  DEPTH BELOW INLET  ${v(`${p}/effectiveDepth`)}`)
  }
  const trench = sheet.find('trench')
  if (trench >= 0) {
    const p = `/components/${trench}`
    line('ABSORPTION TRENCHES')
    line(`  NO. OF LINES ... ${v(`${p}/count`)}`)
    line(`  LENGTH OF EACH . ${v(`${p}/length`)}`)
    line(`  WIDTH .......... ${v(`${p}/width`)}`)
    line(`  GRAVEL BELOW PIPE  ${v(`${p}/effectiveDepth`)}`)
  }
  y += 8
  if (sheet.has('/reference/a'))
    line(`A = ${v('/reference/a')}   B = ${v('/reference/b')}   A TO B ${v('/reference/baseline')}`)
  line(`FINAL INSPECTION APPROVED ${v('/approvedOn')}`)
}
