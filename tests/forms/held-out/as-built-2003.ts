import { MATERIAL_WORDS } from '../layouts/words.ts'
import type { Sheet } from '../sheet.ts'

const HEADS: Record<string, string> = {
  tank: 'Tank',
  'building-sewer': 'House sewer',
  'distribution-box': 'D-box',
  'seepage-pit': 'Pits',
  trench: 'Trenches',
  bed: 'Bed',
}

/** An as-built report: components across and measures down, with a grid of setbacks that asks for distances too. */
export function asBuilt2003(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  let y = 40
  sheet.text('AS-BUILT REPORT, ONSITE SEWAGE SYSTEM', 40, y, { face: 'Helvetica-Bold', size: 13 })
  y += 26
  const three = (cells: readonly (readonly [string, string])[]): void => {
    cells.forEach(([label, value], index) => {
      sheet.text(label, 40 + index * 180, y, { face: 'Helvetica-Bold', size: 9 })
      sheet.text(value, 40 + index * 180 + 85, y, { size: 9 })
    })
    y += 16
  }
  const kinds: Record<string, string> = {
    new: 'New construction',
    repair: 'Repair of existing',
    alteration: 'Expansion',
  }
  three([
    ['Permit', v('/number')],
    ['Tax parcel', v('/parcelNumber')],
    ['Work', kinds[v('/kind')] ?? ''],
  ])
  three([
    ['Situs address', v('/address')],
    ['No. of bdrms', v('/bedrooms')],
    ['Flow, gpd', v('/designFlowGpd')],
  ])
  three([
    ['Permit issued', v('/issuedOn')],
    ['Final approval', v('/approvedOn')],
    ['Perc, mpi', v('/percRateMpi')],
  ])
  three([
    ['Soil', v('/soilTexture')],
    ['Installer lic.', '4471'],
    ['Fee', sheet.truth.noise.fee],
  ])
  y += 12
  const components = sheet.truth.entry.components ?? []
  components.forEach(({ kind }, index) => {
    sheet.text(HEADS[kind] ?? kind, 150 + index * 95, y, { face: 'Helvetica-Bold', size: 9 })
  })
  y += 16
  const rows: readonly (readonly [string, string])[] = [
    ['Quantity', 'count'],
    ['Volume', 'capacity'],
    ['Material', 'material'],
    ['Compartments', 'compartments'],
    ['Length', 'length'],
    ['Width', 'width'],
    ['Diameter', 'diameter'],
    ['Pipe size', 'pipeDiameter'],
    ['Liquid depth', 'liquidDepth'],
    ['Effective depth', 'effectiveDepth'],
    ['Distance to A', 'tie/a'],
    ['Distance to B', 'tie/b'],
  ]
  for (const [label, field] of rows) {
    sheet.text(label, 40, y, { size: 9 })
    components.forEach((_, index) => {
      const value = v(`/components/${index}/${field}`)
      sheet.text(field === 'material' ? (MATERIAL_WORDS[value] ?? '') : value, 150 + index * 95, y, {
        size: 9,
      })
    })
    y += 14
  }
  y += 14
  sheet.text('SETBACKS (ft)', 40, y, { face: 'Helvetica-Bold', size: 9 })
  y += 14
  for (const [label, tank, field] of [
    ['Well', '>100', '>100'],
    ['Property line', '35', '22'],
    ['Foundation', '14', '31'],
  ] as const) {
    sheet.text(label, 40, y, { size: 9 })
    sheet.text(tank, 150, y, { size: 9 })
    sheet.text(field, 245, y, { size: 9 })
    y += 14
  }
  y += 10
  if (sheet.has('/reference/a'))
    sheet.text(
      `Ref. A: ${v('/reference/a')}    Ref. B: ${v('/reference/b')}    A-B: ${v('/reference/baseline')}`,
      40,
      y,
      { size: 9 },
    )
}
