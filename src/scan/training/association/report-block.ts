import { leftOf } from './arrange.ts'
import { asideItem, componentFacts, itemOf, permitFacts } from './items.ts'
import { nameOf } from './labels.ts'
import type { Block } from './parts.ts'
import { SECTIONS } from './words.ts'

const CHECKS =
  'Tank level|Baffles in place|Joints sealed|Tank watertight|Box level|Pipe grade checked|Gravel clean|Paper over gravel|Setback to well met|Setback to line met|Cover adequate|Alarm working|Pump cycle tested|Effluent filter|Riser to grade|Distribution equal|Tight joints|Sewer cleanout'
const ANSWERS = ['Yes', 'No', 'N/A', 'OK', 'yes', 'X', 'n/a', 'Pass', 'Fail', 'NA', '✓']

/** A report in sections: items, checks answered by yes, no or N/A, parts that do not apply. */
export const reportBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  let { y } = region
  let section = 1
  const head = (title: string): void => {
    sheet.run(region.x, y, [roll.chance(0.5) ? `${section}. ${title}` : title])
    section += 1
    y += sheet.line
  }
  const columns = roll.pick([1, 2, 2])
  head(roll.of(SECTIONS))
  y =
    leftOf(
      sheet,
      { ...region, x: region.x + roll.between(0, 20), y },
      permitFacts(sheet, permit).map((fact) => itemOf(sheet, fact)),
      columns,
    ) +
    sheet.size * 0.5
  for (const component of permit.components) {
    if (y > sheet.height - 80) return y
    const name = nameOf(sheet, component.kind)
    head(`${component.existing ? 'Existing ' : ''}${name}`)
    const items = componentFacts(sheet, component, 0.6).map((fact) => itemOf(sheet, fact))
    if (roll.chance(0.4)) items.push(asideItem(sheet))
    y = leftOf(sheet, { ...region, x: region.x + 15, y }, items, columns) + sheet.size * 0.4
  }
  if (roll.chance(0.5) && y < sheet.height - 90) {
    head(nameOf(sheet, roll.pick(['pump-chamber', 'drip-field', 'mound', 'effluent-filter'] as const)))
    const list = roll.of('Capacity|Size|Material|Count').split('|')
    for (const label of [...list, 'Type', 'Depth']) {
      sheet.run(region.x + 15, y, [`${label}:`, ' ', roll.of('N/A|n/a|none|N/A|-|')])
      y += sheet.line
    }
  }
  const checks = roll.shuffled(CHECKS.split('|')).slice(0, roll.whole(0, 9))
  const at = region.x + (region.right - region.x) * roll.between(0.35, 0.8)
  for (const check of checks) {
    if (y > sheet.height - 50) break
    sheet.run(region.x + 10, y, [check, roll.of('|?|:|....')])
    sheet.run(at, y, [roll.pick(ANSWERS)])
    y += sheet.line
  }
  return y
}
