import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

const NAMES: Record<string, string> = {
  tank: 'Tank',
  'building-sewer': 'Sewer',
  'distribution-box': 'D-Box',
  'seepage-pit': 'Drywell',
  trench: 'Trench',
  bed: 'Bed',
}

/** A long list of dotted lines, units in the labels, component names before each; required and installed side by side. */
export function form2009(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  let y = 46
  sheet.text('Subsurface Sewage Treatment: Construction Permit', 60, y, { face: 'Times-Bold', size: 14 })
  y += 30
  const dotted = (label: string, value: string): void => {
    sheet.text(`${label} ${'.'.repeat(Math.max(3, 52 - label.length))} ${value}`, 60, y, { size: 9 })
    y += 13.5
  }
  const number = (text: string): string => text.replace(/ (?:ft|in|gal)$/, '')
  dotted('Permit number', v('/number'))
  dotted('Property ID (PIN)', v('/parcelNumber'))
  dotted('Premises address', v('/address'))
  dotted(
    'Nature of work',
    { new: 'Install new system', repair: 'Replacement', alteration: 'Modification', abandonment: 'Abandon' }[
      v('/kind')
    ] ?? '',
  )
  dotted('Issue date', v('/issuedOn'))
  dotted('Date finaled', v('/approvedOn'))
  dotted('Maximum bedrooms', v('/bedrooms'))
  dotted('Daily design flow, gallons', v('/designFlowGpd'))
  dotted('Percolation rate, minutes per inch', v('/percRateMpi'))
  dotted('Soil texture class', v('/soilTexture'))
  dotted('Owner telephone', sheet.truth.noise.telephone)
  y += 6
  ;(sheet.truth.entry.components ?? []).forEach((component, index) => {
    const p = `/components/${index}`
    const name = NAMES[component.kind] ?? component.kind
    const add = (label: string, field: string, shape: (text: string) => string = (text) => text): void => {
      if (sheet.has(`${p}/${field}`)) dotted(`${name} ${label}`, shape(v(`${p}/${field}`)))
    }
    if (component.kind === 'tank') dotted('Tank volume required (gal)', '1000')
    add('volume installed (gal)', 'capacity', number)
    add('material', 'material', (text) => MATERIAL_WORDS[text] ?? text)
    add('compartments', 'compartments')
    if (sheet.has(`${p}/count`))
      dotted(`Number of ${component.kind === 'trench' ? 'trenches' : 'drywells'}`, v(`${p}/count`))
    add('length', 'length')
    add('width', 'width')
    add('diameter', 'diameter')
    add('pipe diameter', 'pipeDiameter')
    add('liquid depth', 'liquidDepth')
    add(component.kind === 'seepage-pit' ? 'sidewall depth' : 'gravel depth below pipe', 'effectiveDepth')
    add('distance from corner A', 'tie/a')
    add('distance from corner B', 'tie/b')
  })
  y += 6
  if (sheet.has('/reference/a')) {
    dotted('Corner A', v('/reference/a'))
    dotted('Corner B', v('/reference/b'))
    dotted('Distance between corners', v('/reference/baseline'))
  }
}
