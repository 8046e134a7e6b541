import type { Field, UnitOf } from '../../../reading/association/fields.ts'
import { labelOf, nameOf } from './labels.ts'
import { type Block, factOf, labelPart, nothing, type Region, valueParts } from './parts.ts'
import type { Component, Fact } from './permit.ts'
import type { Said, Sheet } from './sheet.ts'

const COLUMNS: readonly Field[] = [
  'count',
  'capacity',
  'material',
  'length',
  'width',
  'diameter',
  'effectiveDepth',
  'liquidDepth',
  'depthToTop',
  'pipeDiameter',
  'compartments',
  'tieA',
  'tieB',
  'area',
]
const UNIT_IN_HEAD: Partial<Record<Field, UnitOf>> = {
  capacity: 'gal',
  length: 'ft',
  pipeDiameter: 'in',
  effectiveDepth: 'in',
  depthToTop: 'in',
  tieA: 'ft',
  tieB: 'ft',
}
const IN_HEAD = { ft: ' (ft)| ft.|, ft', in: ' (in)| in.|, in', gal: ' (gal)| gal.|, gal.', own: '' } as const

/** A value whose unit is said at the head of its column, if it is the unit that it would have. */
function inColumn(sheet: Sheet, fact: Fact, label: number, unit: UnitOf | undefined): Said[] {
  for (let tries = 0; tries < 6 && unit !== undefined; tries++) {
    const written = fact.write(true)
    if (written.unit === unit) return valueParts(sheet, { ...fact, write: () => written }, label)
  }
  return valueParts(sheet, fact, label, sheet.roll.chance(0.3))
}

/** A grid of rows and columns; a cell may be empty. */
function grid(
  sheet: Sheet,
  { x, right, y }: Region,
  heads: readonly Said[],
  rows: readonly (readonly (readonly Said[])[])[],
): number {
  const { roll } = sheet
  const size = sheet.size * roll.between(0.75, 1)
  const widths = heads.map(
    (head, at) =>
      Math.max(sheet.widthOf([head], size), ...rows.map((row) => sheet.widthOf(row[at] ?? []))) +
      roll.between(6, 22),
  )
  const total = widths.reduce((sum, width) => sum + width, 0)
  const stretch = total < right - x && roll.chance(0.6) ? (right - x) / total : 1
  const places = widths.map(
    (_, at) => x + widths.slice(0, at).reduce((sum, width) => sum + width, 0) * stretch,
  )
  const inset = roll.between(0, 6)
  heads.forEach((head, at) => {
    sheet.run(places[at]!, y, [head], { size })
  })
  let down = y + sheet.line
  for (const row of rows) {
    row.forEach((cell, at) => {
      sheet.run(places[at]! + (at === 0 ? 0 : inset), down, cell)
    })
    down += sheet.line
  }
  return down
}

/** Components down, measures across, or the other way about. */
export const componentTable: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const components = roll.chance(0.8) ? permit.components : roll.shuffled(permit.components)
  const columns = roll
    .shuffled(COLUMNS)
    .slice(0, roll.whole(3, 7))
    .sort((a, b) => COLUMNS.indexOf(a) - COLUMNS.indexOf(b))
  const unitSaid = columns.map((f) => (roll.chance(0.4) ? UNIT_IN_HEAD[f] : undefined))
  const ids = columns.map(() => sheet.label())
  const labels = columns.map((f, at) =>
    labelPart(labelOf(sheet, f) + roll.of(IN_HEAD[unitSaid[at] ?? 'own'] || ''), ids[at]!),
  )
  const cellOf = (component: Component, at: number): Said[] => {
    const fact = factOf(component, columns[at]!)
    return fact && roll.chance(0.85) ? inColumn(sheet, fact, ids[at]!, unitSaid[at]) : [nothing(sheet)]
  }
  const names = components.map(
    (component) =>
      `${component.existing ? roll.of('Exist. |Existing |Old ') : ''}${nameOf(sheet, component.kind)}`,
  )
  const extra = roll.chance(0.3) ? [nameOf(sheet, roll.pick(['well', 'pump-chamber', 'riser'] as const))] : []
  if (roll.chance(0.7))
    return grid(
      sheet,
      region,
      [roll.of('Component|Item|Part|UNIT||'), ...labels],
      [
        ...components.map((component, row) => [
          [names[row]!],
          ...columns.map((_, at) => cellOf(component, at)),
        ]),
        ...extra.map((name) => [[name], ...columns.map(() => [roll.chance(0.4) ? nothing(sheet) : ''])]),
      ],
    )
  return grid(
    sheet,
    region,
    ['', ...names],
    columns.map((_, at) => [[labels[at]!], ...components.map((component) => cellOf(component, at))]),
  )
}

/** A repair's sheet: what was there beside what is put in, in columns or one under the other. */
export const existingNew: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const kinds = [...new Set(permit.components.map(({ kind }) => kind))]
  const heads = roll.pick([
    ['Existing', 'New'],
    ['EXISTING', 'PROPOSED'],
    ['Existing system', 'Replacement'],
    ['Old', 'New'],
    ['Present', 'Installed'],
    ['EXISTING', 'REPAIR'],
    ['Before', 'After'],
    ['AS FOUND', 'AS LEFT'],
    ['Found', 'Put in'],
    ['Original', 'Replaced by'],
    ['In place', 'Added'],
    ['Was', 'Now'],
    ['Failed system', 'New system'],
    ['FOUND', 'FURNISHED'],
  ])
  const swapped = roll.chance(0.2)
  const rows: Said[][][] = []
  for (const kind of kinds) {
    const old = permit.components.find((component) => component.kind === kind && component.existing)
    const fresh = permit.components.find((component) => component.kind === kind && !component.existing)
    const fields = [...new Set([...(old?.facts ?? []), ...(fresh?.facts ?? [])].map(({ f }) => f))].filter(
      (f) => !f.startsWith('tie') && roll.chance(0.45),
    )
    const name = nameOf(sheet, kind)
    const headed = roll.chance(0.4)
    if (headed && fields.length > 0) rows.push([[name], [], []])
    for (const f of fields) {
      const id = sheet.label()
      const value = (component: Component | undefined): Said[] => {
        const fact = component && factOf(component, f)
        if (!fact || roll.chance(0.15))
          return [roll.chance(0.5) ? nothing(sheet) : roll.of('same|no change|remains||')]
        return valueParts(sheet, fact, id, roll.chance(0.3))
      }
      const cells = [value(old), value(fresh)]
      rows.push([
        [
          labelPart(
            headed ? labelOf(sheet, f, 'before', kind) : `${name} ${labelOf(sheet, f, 'before', kind)}`,
            id,
          ),
        ],
        ...(swapped ? cells.reverse() : cells),
      ])
    }
  }
  return rows.length === 0
    ? region.y
    : grid(sheet, region, ['', ...(swapped ? [...heads].reverse() : heads)], rows)
}

/** Label and value in fixed columns, as machines print them. */
export const printout: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const upper = roll.chance(0.7)
  const fill = roll.of('.|.| |:|')
  const width = roll.whole(16, 28)
  const columns = roll.chance(0.35) && region.right - region.x > 400 ? 2 : 1
  const facts = [
    ...permit.facts.filter(() => roll.chance(0.65)).map((fact) => ({ fact, name: '' })),
    ...permit.components.flatMap((component) => {
      const name = `${component.existing ? 'EXIST ' : ''}${nameOf(sheet, component.kind)}`
      return component.facts.filter(() => roll.chance(0.5)).map((fact) => ({ fact, name }))
    }),
  ]
  const wide = (region.right - region.x) / columns
  const rows = Math.ceil(facts.length / columns)
  let lowest = region.y
  facts.forEach(({ fact, name }, nth) => {
    const id = sheet.label()
    const plain = `${name ? `${name} ` : ''}${labelOf(sheet, fact.f, 'before', fact.of)}`
    const label = upper ? plain.toUpperCase() : plain
    const x = region.x + (columns === 2 && nth >= rows ? wide : 0)
    const y = region.y + (columns === 2 ? nth % rows : nth) * sheet.line
    if (y > sheet.height - 30) return
    const end = sheet.run(x, y, [labelPart(label, id)])
    const at = Math.max(end + 4, x + width * sheet.size * 0.6)
    if (fill === '.')
      sheet.run(end, y, ['.'.repeat(Math.max(0, Math.floor((at - end) / sheet.widthOf('.')) - 1)), ':'])
    else if (fill === ':') sheet.run(end, y, [':'])
    const said = roll.chance(0.1) ? [nothing(sheet)] : valueParts(sheet, fact, id, roll.chance(0.4))
    sheet.run(at + 3, y, said)
    lowest = Math.max(lowest, y + sheet.line)
  })
  return lowest
}

export const tableOf = grid
