import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

/** An inspector's typed notes: a line for each component, the trade's abbreviations, no form at all. */
export function fieldNotes1990(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  let y = 50
  const line = (text: string): void => {
    sheet.text(text, 54, y)
    y += 17
  }
  line('SANITARIAN FIELD NOTES')
  line(`Permit ${v('/number')}    PIN ${v('/parcelNumber')}`)
  line(`${v('/address')}`)
  line(`Permit type: ${v('/kind')}.  Issued ${v('/issuedOn')}.  Approved ${v('/approvedOn')}.`)
  line(
    `${v('/bedrooms')} BR house, ${v('/designFlowGpd')} gpd, perc ${v('/percRateMpi')} min/in, soil ${v('/soilTexture')}`,
  )
  line(`Installed by ${sheet.truth.noise.installer}, ${sheet.truth.noise.telephone}`)
  y += 6
  const t = `/components/${sheet.find('tank')}`
  const material = (pointer: string): string => MATERIAL_WORDS[v(pointer)] ?? ''
  line(
    `Septic tank: ${v(`${t}/capacity`)} ${material(`${t}/material`)}, ${v(`${t}/compartments`)} comp., ${v(`${t}/length`)} x ${v(`${t}/width`)} x ${v(`${t}/liquidDepth`)} L.D.`,
  )
  line(`   ties A ${v(`${t}/tie/a`)}, B ${v(`${t}/tie/b`)}`)
  const sewer = sheet.find('building-sewer')
  if (sewer >= 0)
    line(
      `House sewer: ${v(`/components/${sewer}/pipeDiameter`)} ${material(`/components/${sewer}/material`)}`,
    )
  const box = sheet.find('distribution-box')
  if (box >= 0)
    line(
      `D-box: ${material(`/components/${box}/material`)}, A ${v(`/components/${box}/tie/a`)}, B ${v(`/components/${box}/tie/b`)}`,
    )
  const pit = sheet.find('seepage-pit')
  if (pit >= 0)
    line(
      `Seepage pits: ${v(`/components/${pit}/count`)} ea., ${v(`/components/${pit}/diameter`)} dia. x ${v(`/components/${pit}/effectiveDepth`)} below inlet`,
    )
  const trench = sheet.find('trench')
  if (trench >= 0)
    line(
      `Leach trenches: ${v(`/components/${trench}/count`)} @ ${v(`/components/${trench}/length`)} x ${v(`/components/${trench}/width`)} wide, ${v(`/components/${trench}/effectiveDepth`)} rock below pipe`,
    )
  const bed = sheet.find('bed')
  if (bed >= 0)
    line(
      `Leach bed: ${v(`/components/${bed}/length`)} x ${v(`/components/${bed}/width`)}, ${v(`/components/${bed}/effectiveDepth`)} rock below pipe`,
    )
  if (sheet.has('/reference/a')) {
    line(`A = ${v('/reference/a')}`)
    line(`B = ${v('/reference/b')}`)
    line(`A to B = ${v('/reference/baseline')}`)
  }
}
