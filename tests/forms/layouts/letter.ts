import type { Sheet } from '../sheet.ts'
import { MATERIAL_WORDS, NUMBER_WORDS } from './words.ts'

const WORK: Record<string, string> = {
  new: 'for a new sewage disposal system',
  repair: 'to repair the sewage disposal system',
  alteration: 'to alter the sewage disposal system',
  abandonment: 'to abandon the sewage disposal system',
}

/** A letter in plain prose to the file. */
export function letter(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  const n = (text: string): string => NUMBER_WORDS[Number(text)] ?? text
  const t = `/components/${sheet.find('tank')}`
  const paragraphs = [
    `Re: Parcel ${v('/parcelNumber')}, ${v('/address')}`,
    'To the file:',
    `Permit No. ${v('/number')} was issued on ${v('/issuedOn')} ${WORK[v('/kind')]} to serve a ${n(v('/bedrooms'))} bedroom house. The design flow is ${v('/designFlowGpd')} gallons per day. The soil is ${v('/soilTexture')} and the percolation rate was ${v('/percRateMpi')} minutes per inch.`,
    `The system consists of a ${v(`${t}/capacity`).replace(' gal', ' gallon')} ${MATERIAL_WORDS[v(`${t}/material`)]} septic tank, ${v(`${t}/length`)} long by ${v(`${t}/width`)} wide inside with a liquid depth of ${v(`${t}/liquidDepth`)}.`,
  ]
  if (sheet.has('/reference/a'))
    paragraphs.push(
      `The tank is ${v(`${t}/tie/a`)} from corner A and ${v(`${t}/tie/b`)} from corner B. Corner A is the ${v('/reference/a')} and corner B is the ${v('/reference/b')}. The corners are ${v('/reference/baseline')} apart.`,
    )
  const pit = sheet.find('seepage-pit')
  if (pit >= 0) {
    const p = `/components/${pit}`
    const many = Number(v(`${p}/count`)) > 1
    paragraphs.push(
      `${cap(n(v(`${p}/count`)))} seepage pit${many ? 's' : ''} ${v(`${p}/diameter`)} in diameter ${many ? 'were' : 'was'} installed, with ${v(`${p}/effectiveDepth`)} of sidewall below the inlet.`,
    )
  }
  const trench = sheet.find('trench')
  if (trench >= 0) {
    const p = `/components/${trench}`
    paragraphs.push(
      `${cap(n(v(`${p}/count`)))} leaching trenches, each ${v(`${p}/length`)} long and ${v(`${p}/width`)} wide, with ${v(`${p}/effectiveDepth`)} of gravel below the pipe, take the effluent.`,
    )
  }
  const bed = sheet.find('bed')
  if (bed >= 0) {
    const p = `/components/${bed}`
    paragraphs.push(
      `A leaching bed ${v(`${p}/length`)} long and ${v(`${p}/width`)} wide with ${v(`${p}/effectiveDepth`)} of gravel below the pipe takes the effluent.`,
    )
  }
  paragraphs.push(`The work was inspected and finally approved on ${v('/approvedOn')}.`, 'Sanitarian')
  sheet.text('Quillback County Health Department', 72, 60, { size: 12 })
  let y = 100
  for (const paragraph of paragraphs) {
    sheet.text(paragraph, 72, y, { width: 460, lineGap: 2 })
    y = sheet.pdf.y + 12
  }
}

const cap = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
