import type { Sheet } from '../sheet.ts'
import { MATERIAL_WORDS } from './words.ts'

/** A form made on a screen: gray labels above the values in columns, square boxes to tick. */
export function form2015(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  let y = 40
  sheet.text('Onsite Wastewater Treatment System Permit', 40, y, { face: 'Helvetica-Bold', size: 16 })
  sheet.text('Quillback County Public Health, Onsite Program', 40, y + 20, { size: 9 })
  y += 48
  const row = (cells: readonly (readonly [label: string, value: string])[]): void => {
    const width = 532 / cells.length
    cells.forEach(([label, value], index) => {
      const x = 40 + index * width
      sheet.pdf.fillColor('#666')
      sheet.text(label, x, y, { size: 7.5 })
      sheet.pdf.fillColor('#000')
      sheet.text(value, x, y + 10, { size: 10.5 })
    })
    y += 32
  }
  const ticks = (label: string, options: readonly (readonly [string, boolean])[]): void => {
    sheet.text(label, 40, y, { face: 'Helvetica-Bold', size: 9 })
    let x = 150
    for (const [option, ticked] of options) {
      sheet.text(ticked ? '[x]' : '[ ]', x, y, { size: 9 })
      sheet.text(option, x + 16, y, { size: 9 })
      x += 95
    }
    y += 18
  }
  const section = (text: string): void => {
    y += 6
    sheet.text(text, 40, y, { face: 'Helvetica-Bold', size: 11 })
    sheet.rule(40, y + 14, 572)
    y += 20
  }
  row([
    ['Permit #', v('/number')],
    ['Assessor parcel number (APN)', v('/parcelNumber')],
    ['Issued', v('/issuedOn')],
    ['Final approval', v('/approvedOn')],
  ])
  row([
    ['Site address', v('/address')],
    ['Installer', sheet.truth.noise.installer],
  ])
  const kind = v('/kind')
  ticks('Work type', [
    ['New', kind === 'new'],
    ['Repair', kind === 'repair'],
    ['Alteration', kind === 'alteration'],
    ['Abandonment', kind === 'abandonment'],
  ])
  row([
    ['Number of bedrooms', v('/bedrooms')],
    ['Design flow (gpd)', v('/designFlowGpd')],
    ['Percolation rate (min/in)', v('/percRateMpi')],
    ['Soil texture', v('/soilTexture')],
  ])
  ;(sheet.truth.entry.components ?? []).forEach((component, index) => {
    const p = `/components/${index}`
    const names: Record<string, string> = {
      tank: 'Septic tank',
      'building-sewer': 'Building sewer',
      'distribution-box': 'Distribution box',
      'seepage-pit': 'Seepage pits',
      trench: 'Absorption trenches',
      bed: 'Absorption bed',
    }
    section(names[component.kind] ?? component.kind)
    const cells: [string, string][] = []
    const add = (label: string, field: string, shape: (text: string) => string = (text) => text): void => {
      if (sheet.has(`${p}/${field}`)) cells.push([label, shape(v(`${p}/${field}`))])
    }
    add('Quantity', 'count')
    add('Capacity (gal)', 'capacity', (text) => text.replace(' gal', ''))
    add('Material', 'material', (text) => MATERIAL_WORDS[text] ?? text)
    add('Compartments', 'compartments')
    add('Length', 'length')
    add('Width', 'width')
    add('Diameter', 'diameter')
    add('Pipe diameter', 'pipeDiameter')
    add('Liquid depth', 'liquidDepth')
    add(
      component.kind === 'seepage-pit' ? 'Sidewall depth below inlet' : 'Gravel depth below pipe',
      'effectiveDepth',
    )
    add('Tie from A', 'tie/a')
    add('Tie from B', 'tie/b')
    for (let at = 0; at < cells.length; at += 5) row(cells.slice(at, at + 5))
  })
  if (sheet.has('/reference/a')) {
    section('Reference corners')
    row([
      ['Corner A', v('/reference/a')],
      ['Corner B', v('/reference/b')],
      ['Baseline A to B', v('/reference/baseline')],
    ])
  }
}
