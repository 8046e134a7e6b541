import type { Sheet } from '../sheet.ts'
import { MATERIAL_WORDS } from './words.ts'

/** A mimeographed form: blanks to fill in on the line, `( )` to cross, sections under capitals. */
export function form1978(sheet: Sheet): void {
  let y = 40
  const v = (pointer: string): string => sheet.value(pointer)
  const blank = (text: string): string => `__${text === '' ? '____' : text}__`
  const line = (text: string): void => {
    sheet.text(text, 48, y)
    y += 19
  }
  const cross = (yes: boolean): string => (yes ? '(X)' : '( )')
  sheet.text('COUNTY OF QUILLBACK - ENVIRONMENTAL HEALTH', 160, y, { face: 'Courier-Bold' })
  y += 16
  sheet.text('INDIVIDUAL SEWAGE DISPOSAL PERMIT', 190, y, { face: 'Courier-Bold' })
  y += 30
  const kind = v('/kind')
  line(`Permit # ${blank(v('/number'))}      Assessor's Parcel No. ${blank(v('/parcelNumber'))}`)
  line(`Job address ${blank(v('/address'))}   Phone ${blank(sheet.truth.noise.telephone)}`)
  line(
    `${cross(kind === 'new')} New  ${cross(kind === 'repair')} Repair  ${cross(kind === 'alteration')} Alteration  ${cross(kind === 'abandonment')} Abandonment`,
  )
  line(
    `Issued ${blank(v('/issuedOn'))}    Number of bedrooms ${blank(v('/bedrooms'))}   Est. flow ${blank(v('/designFlowGpd'))} gpd`,
  )
  line(
    `Perc test result ${blank(v('/percRateMpi'))} minutes per inch    Soil type ${blank(v('/soilTexture'))}`,
  )
  y += 8
  sheet.text('1. SEPTIC TANK', 48, y, { face: 'Courier-Bold' })
  y += 19
  const t = `/components/${sheet.find('tank')}`
  line(
    `Size ${blank(v(`${t}/capacity`).replace(' gal', ''))} gallons   Compartments ${blank(v(`${t}/compartments`))}   Made of ${blank(MATERIAL_WORDS[v(`${t}/material`)] ?? '')}`,
  )
  line(
    `Inside dimensions: L ${blank(v(`${t}/length`))} W ${blank(v(`${t}/width`))} Liquid depth ${blank(v(`${t}/liquidDepth`))}`,
  )
  line(`Distance from corner A ${blank(v(`${t}/tie/a`))}  from corner B ${blank(v(`${t}/tie/b`))}`)
  const sewer = sheet.find('building-sewer')
  if (sewer >= 0)
    line(
      `House sewer: ${blank(v(`/components/${sewer}/pipeDiameter`))} dia.  Material ${blank(MATERIAL_WORDS[v(`/components/${sewer}/material`)] ?? '')}`,
    )
  y += 8
  sheet.text('2. DISPOSAL FIELD', 48, y, { face: 'Courier-Bold' })
  y += 19
  const trench = sheet.find('trench')
  const bed = sheet.find('bed')
  const pit = sheet.find('seepage-pit')
  line(`${cross(trench >= 0)} Trenches  ${cross(bed >= 0)} Bed  ${cross(pit >= 0)} Seepage pits`)
  const f = `/components/${Math.max(trench, bed, pit)}`
  if (pit >= 0)
    line(
      `No. of pits ${blank(v(`${f}/count`))}  Diameter ${blank(v(`${f}/diameter`))}  Depth below inlet ${blank(v(`${f}/effectiveDepth`))}`,
    )
  if (trench >= 0)
    line(
      `No. of lines ${blank(v(`${f}/count`))}  Length of each ${blank(v(`${f}/length`))}  Width ${blank(v(`${f}/width`))}`,
    )
  if (bed >= 0) line(`Length ${blank(v(`${f}/length`))}  Width ${blank(v(`${f}/width`))}`)
  if (pit < 0) line(`Rock below pipe ${blank(v(`${f}/effectiveDepth`))}`)
  const box = sheet.find('distribution-box')
  if (box >= 0)
    line(`D-box: A ${blank(v(`/components/${box}/tie/a`))} B ${blank(v(`/components/${box}/tie/b`))}`)
  y += 8
  if (sheet.has('/reference/a')) {
    line(`Corner A is ${blank(v('/reference/a'))}`)
    line(`Corner B is ${blank(v('/reference/b'))}   A to B ${blank(v('/reference/baseline'))}`)
  }
  line(`Contractor ${blank(sheet.truth.noise.installer)}`)
  line(`Work inspected and approved: ${blank(v('/approvedOn'))}`)
}
