import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

/** A field slip: questions with leaders on the left, answers flush right; measures in a small grid at the foot. */
export function slip1983(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  sheet.text('QUILLBACK COUNTY', 60, 40, { face: 'Helvetica-Bold', size: 11 })
  sheet.text('On-Site Sewage System Inspection Slip', 60, 56, { face: 'Helvetica', size: 11 })
  let y = 90
  const ask = (question: string, answer: string): void => {
    sheet.text(`${question} ${'.'.repeat(Math.max(4, 44 - question.length))}`, 60, y, {
      face: 'Helvetica',
      size: 9,
    })
    sheet.text(answer, 320, y)
    y += 19
  }
  const t = `/components/${sheet.find('tank')}`
  ask('Permit no.', v('/number'))
  ask('Date permit issued', v('/issuedOn'))
  ask('Assessor parcel no.', v('/parcelNumber'))
  ask('Job address', v('/address'))
  ask('Nature of work', v('/kind') === 'new' ? 'New' : v('/kind'))
  ask('Number of bedrooms', v('/bedrooms'))
  ask('Design flow (gal. per day)', v('/designFlowGpd'))
  ask('Percolation rate (min. per inch)', v('/percRateMpi'))
  ask('Soil type', v('/soilTexture'))
  ask('Septic tank: liquid capacity', v(`${t}/capacity`))
  ask('Septic tank: material', MATERIAL_WORDS[v(`${t}/material`)] ?? '')
  ask('Septic tank: inside length', v(`${t}/length`))
  ask('Septic tank: inside width', v(`${t}/width`))
  ask('Septic tank: liquid depth', v(`${t}/liquidDepth`))
  const pit = sheet.find('seepage-pit')
  const trench = sheet.find('trench')
  const f = `/components/${pit >= 0 ? pit : trench >= 0 ? trench : sheet.find('bed')}`
  const name = pit >= 0 ? 'Seepage pits' : trench >= 0 ? 'Leach trenches' : 'Leach bed'
  if (pit >= 0 || trench >= 0) ask(`${name}: number`, v(`${f}/count`))
  if (pit >= 0) {
    ask(`${name}: diameter`, v(`${f}/diameter`))
    ask(`${name}: depth below inlet`, v(`${f}/effectiveDepth`))
  } else {
    ask(`${name}: length${trench >= 0 ? ' of each' : ''}`, v(`${f}/length`))
    ask(`${name}: width`, v(`${f}/width`))
    ask(`${name}: rock under pipe`, v(`${f}/effectiveDepth`))
  }
  if (sheet.has('/reference/a')) {
    y += 8
    sheet.text('Measured from', 60, y, { face: 'Helvetica', size: 9 })
    sheet.text(`A: ${v('/reference/a')}`, 160, y)
    sheet.text(`B: ${v('/reference/b')}`, 360, y)
    y += 18
    sheet.text('Tank', 60, y, { face: 'Helvetica', size: 9 })
    sheet.text(`to A ${v(`${t}/tie/a`)}`, 160, y)
    sheet.text(`to B ${v(`${t}/tie/b`)}`, 360, y)
    y += 18
  }
  ask('Final inspection approved', v('/approvedOn'))
  ask('Installed by', sheet.truth.noise.installer)
}
