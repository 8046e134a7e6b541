import type { Sheet } from '../sheet.ts'
import { KIND_WORDS, MATERIAL_WORDS } from './words.ts'

const NAMES: Record<string, string> = {
  tank: 'Septic tank',
  'building-sewer': 'Building sewer',
  'distribution-box': 'Distribution box',
  'seepage-pit': 'Seepage pit',
  trench: 'Leach trench',
  bed: 'Leach bed',
}

/** A form with a table: a component a row, a measure a column. */
export function form1986(sheet: Sheet): void {
  const v = (pointer: string): string => sheet.value(pointer)
  sheet.text('Quillback County Department of Health', 40, 36, { face: 'Helvetica-Bold', size: 14 })
  sheet.text('ON-SITE SEWAGE SYSTEM: PERMIT AND FINAL INSPECTION', 40, 54, {
    face: 'Helvetica-Bold',
    size: 10,
  })
  let y = 84
  const pair = (label: string, value: string, x: number): void => {
    sheet.text(`${label}:`, x, y, { face: 'Helvetica-Bold', size: 9 })
    sheet.text(value, x + 105, y)
  }
  const rows: readonly (readonly [string, string, string, string])[] = [
    ['Permit No.', v('/number'), 'Parcel ID', v('/parcelNumber')],
    ['Site address', v('/address'), 'Permit type', KIND_WORDS[v('/kind')] ?? ''],
    ['Date issued', v('/issuedOn'), 'Bedrooms', v('/bedrooms')],
    ['Design flow', `${v('/designFlowGpd')} gpd`, 'Perc rate', `${v('/percRateMpi')} mpi`],
    ['Soil texture', v('/soilTexture'), 'Receipt', sheet.truth.noise.fee],
  ]
  for (const [label, value, label2, value2] of rows) {
    pair(label, value, 40)
    pair(label2, value2, 320)
    y += 17
  }
  y += 12
  const columns: readonly (readonly [head: string, field: string, x: number, width: number])[] = [
    ['Component', '', 40, 92],
    ['No.', 'count', 132, 28],
    ['Capacity', 'capacity', 160, 58],
    ['Material', 'material', 218, 86],
    ['Length', 'length', 304, 48],
    ['Width', 'width', 352, 46],
    ['Dia.', 'diameter', 398, 36],
    ['Eff. depth', '', 434, 52],
    ['From A', 'tie/a', 486, 46],
    ['From B', 'tie/b', 532, 46],
  ]
  for (const [head, , x, width] of columns) {
    sheet.box(x, y, width, 18)
    sheet.text(head, x + 3, y + 5, { face: 'Helvetica-Bold', size: 8 })
  }
  y += 18
  ;(sheet.truth.entry.components ?? []).forEach((component, index) => {
    for (const [head, field, x, width] of columns) {
      sheet.box(x, y, width, 18)
      const base = `/components/${index}`
      const depth = component.kind === 'tank' ? 'liquidDepth' : 'effectiveDepth'
      const value =
        head === 'Component'
          ? (NAMES[component.kind] ?? component.kind)
          : head === 'Eff. depth'
            ? v(`${base}/${depth}`)
            : field === 'material'
              ? (MATERIAL_WORDS[v(`${base}/material`)] ?? '')
              : v(`${base}/${field}`)
      sheet.text(value, x + 3, y + 5, { size: 8 })
    }
    y += 18
  })
  y += 20
  if (sheet.has('/reference/a')) {
    sheet.text(
      `Ties: A is the ${v('/reference/a')}, B is the ${v('/reference/b')}; A to B is ${v('/reference/baseline')}.`,
      40,
      y,
      { size: 9 },
    )
    y += 20
  }
  pair('Installer', sheet.truth.noise.installer, 40)
  y += 17
  pair('Approved', v('/approvedOn'), 40)
}
