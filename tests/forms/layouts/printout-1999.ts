import type { Sheet } from '../sheet.ts'
import { MATERIAL_WORDS } from './words.ts'

/** A print-out of a record system: fixed pitch, colons, a block for each component. */
export function printout1999(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  let y = 40
  const print = (text: string): void => {
    sheet.text(text, 36, y)
    y += 12
  }
  const row = (label: string, value: string, label2 = '', value2 = ''): void =>
    print(`${`${label}:`.padEnd(20)}${value.padEnd(26)}${label2 ? `${label2}:`.padEnd(18) : ''}${value2}`)
  print('QUILLBACK COUNTY                SEPTIC PERMIT RECORD               PAGE 1')
  print('='.repeat(74))
  row('PERMIT NUMBER', v('/number'), 'PARCEL', v('/parcelNumber'))
  row('PERMIT CLASS', v('/kind').toUpperCase(), 'ISSUE DATE', v('/issuedOn'))
  row('SITUS', v('/address').toUpperCase(), 'FINAL DATE', v('/approvedOn'))
  row('BEDROOMS', v('/bedrooms'), 'DAILY FLOW GPD', v('/designFlowGpd'))
  row('PERC MPI', v('/percRateMpi'), 'SOIL TEXTURE', v('/soilTexture').toUpperCase())
  row('CONTRACTOR', sheet.truth.noise.installer.toUpperCase(), 'PHONE', sheet.truth.noise.telephone)
  print('-'.repeat(74))
  ;(sheet.truth.entry.components ?? []).forEach((component, index) => {
    const at = `/components/${index}`
    const names: Record<string, string> = {
      tank: 'SEPTIC TANK',
      'building-sewer': 'BUILDING SEWER',
      'distribution-box': 'DISTRIBUTION BOX',
      'seepage-pit': 'SEEPAGE PIT',
      trench: 'TRENCH',
      bed: 'BED',
    }
    print(`COMPONENT ${index + 1}: ${names[component.kind]}`)
    const cells: [string, string][] = []
    const add = (label: string, field: string, shape: (text: string) => string = (text) => text): void => {
      if (sheet.has(`${at}/${field}`)) cells.push([label, shape(v(`${at}/${field}`))])
    }
    add('QTY', 'count')
    add('CAPACITY GAL', 'capacity', (text) => text.replace(' gal', '').replace(',', ''))
    add('MATERIAL', 'material', (text) => (MATERIAL_WORDS[text] ?? text).toUpperCase())
    add('COMPARTMENTS', 'compartments')
    add('LENGTH', 'length')
    add('WIDTH', 'width')
    add('DIAMETER', 'diameter')
    add('PIPE DIA', 'pipeDiameter')
    add(
      component.kind === 'tank' ? 'LIQUID DEPTH' : 'EFFECTIVE DEPTH',
      component.kind === 'tank' ? 'liquidDepth' : 'effectiveDepth',
    )
    add('TIE A', 'tie/a')
    add('TIE B', 'tie/b')
    for (let cell = 0; cell < cells.length; cell += 2) {
      const [left, right] = [cells[cell]!, cells[cell + 1]]
      print(
        `   ${`${left[0]}:`.padEnd(17)}${left[1].padEnd(20)}${right ? `${right[0]}:`.padEnd(17) + right[1] : ''}`,
      )
    }
  })
  print('-'.repeat(74))
  if (sheet.has('/reference/a')) {
    row('CORNER A', v('/reference/a').toUpperCase())
    row('CORNER B', v('/reference/b').toUpperCase())
    row('BASELINE A-B', v('/reference/baseline'))
  }
}
