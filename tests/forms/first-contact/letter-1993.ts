import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

/** An installer's letter of completion: facts in a short list, then swing ties as a sketch notes them. */
export function letter1993(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  sheet.text(sheet.truth.noise.installer, 72, 50, { face: 'Times-Bold', size: 13 })
  sheet.text(`Telephone ${sheet.truth.noise.telephone}`, 72, 66)
  sheet.text('Quillback County, Office of Environmental Health', 72, 96)
  sheet.text(`Subject: Completion of septic system, parcel ${v('/parcelNumber')}`, 72, 122, {
    face: 'Times-Bold',
  })
  sheet.text(
    `Under permit ${v('/number')}, issued ${v('/issuedOn')}, we have installed the system at ${v('/address')}, a ${v('/bedrooms')} bedroom residence. The inspector approved it on ${v('/approvedOn')}.`,
    72,
    146,
    { width: 460, lineGap: 2 },
  )
  let y = sheet.pdf.y + 12
  const item = (words: string): void => {
    sheet.text(`- ${words}`, 84, y)
    y += 18
  }
  const t = `/components/${sheet.find('tank')}`
  item(`Septic tank: ${v(`${t}/capacity`)}, ${MATERIAL_WORDS[v(`${t}/material`)]}`)
  item(
    `Tank inside: ${v(`${t}/length`)} long, ${v(`${t}/width`)} wide, liquid depth ${v(`${t}/liquidDepth`)}`,
  )
  const pit = sheet.find('seepage-pit')
  const f = `/components/${pit >= 0 ? pit : sheet.find('trench', 'bed')}`
  if (pit >= 0)
    item(
      `Seepage pits: ${v(`${f}/count`)}, ${v(`${f}/diameter`)} diameter, ${v(`${f}/effectiveDepth`)} effective depth`,
    )
  else if (sheet.find('trench') >= 0)
    item(
      `Trenches: ${v(`${f}/count`)}, each ${v(`${f}/length`)} long, ${v(`${f}/width`)} wide, ${v(`${f}/effectiveDepth`)} stone below pipe`,
    )
  else
    item(
      `Bed: ${v(`${f}/length`)} long, ${v(`${f}/width`)} wide, ${v(`${f}/effectiveDepth`)} stone below pipe`,
    )
  if (sheet.has('/reference/a')) {
    y += 10
    sheet.text('Swing ties', 72, y, { face: 'Times-Bold' })
    y += 18
    item(`Corner A: ${v('/reference/a')}`)
    item(`Corner B: ${v('/reference/b')}`)
    item(`A to B: ${v('/reference/baseline')}`)
    item(`Septic tank: A ${v(`${t}/tie/a`)}, B ${v(`${t}/tie/b`)}`)
    const box = `/components/${sheet.find('distribution-box')}`
    if (sheet.find('distribution-box') >= 0) item(`D-box: A ${v(`${box}/tie/a`)}, B ${v(`${box}/tie/b`)}`)
  }
  sheet.text('Respectfully submitted', 72, y + 20)
}
