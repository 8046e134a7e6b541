import { labelPart, type Region } from './parts.ts'
import type { Said, Sheet } from './sheet.ts'

/** A label and what stands for it: a value, something that is not wanted, or nothing. */
export type Item = {
  readonly label: string
  readonly id: number
  readonly said: readonly Said[]
  readonly wide: boolean
}

const MARKS = [':', ':', '', '.', ' -', ':', '=', ' ....', '?', ' __']

/** Labels left of their values, in columns; with leaders, underlines or neither. */
export function leftOf(
  sheet: Sheet,
  { x, right, y }: Region,
  items: readonly Item[],
  columns: number,
): number {
  const { roll } = sheet
  const wide = (right - x) / columns
  const mark = roll.pick(MARKS)
  const aligned = roll.chance(0.5)
  const labelWide = wide * roll.between(0.35, 0.6)
  const leaders = aligned && roll.chance(0.3) ? roll.of('.|_|. ') : ''
  const underlined = roll.chance(0.25)
  const perColumn = Math.ceil(items.length / columns)
  const byRow = roll.chance(0.6)
  let lowest = y
  let slot = 0
  for (const item of items) {
    const column = byRow ? slot % columns : Math.floor(slot / perColumn)
    const row = byRow ? Math.floor(slot / columns) : slot % perColumn
    slot += item.wide && byRow && columns > 1 && column === 0 ? columns : 1
    const at = x + column * wide
    const down = y + row * sheet.line
    let end = sheet.run(at, down, [labelPart(item.label, item.id), mark])
    if (aligned) {
      if (leaders) {
        const room = at + labelWide - end - 2
        const each = sheet.widthOf(leaders)
        if (room > each * 3) sheet.run(end + 1, down, [leaders.repeat(Math.floor(room / each))])
      }
      end = Math.max(end + sheet.size * 0.4, at + labelWide)
    } else end += sheet.size * roll.between(0.4, 1.6)
    if (underlined && roll.chance(0.7)) {
      const fill = '_'.repeat(roll.whole(1, 5))
      sheet.run(end, down, [
        fill,
        ...(roll.chance(0.5) ? [' '] : []),
        ...item.said,
        roll.chance(0.5) ? fill : '',
      ])
    } else sheet.run(end, down, item.said)
    lowest = Math.max(lowest, down + sheet.line)
  }
  return lowest
}

/** Labels above (or below) their values in a grid of cells. */
export function inCells(
  sheet: Sheet,
  { x, right, y }: Region,
  items: readonly Item[],
  below: boolean,
): number {
  const { roll } = sheet
  const small = sheet.size * roll.between(0.6, 0.95)
  const step = sheet.size * roll.between(1.05, 1.7)
  const tall = step * 2 + sheet.size * roll.between(0.4, 1.2)
  let at = x
  let down = y
  const inset = roll.between(0, 14)
  for (const item of items) {
    const need =
      Math.max(sheet.widthOf(item.label, small), sheet.widthOf(item.said) + inset) + roll.between(10, 50)
    if (at + need > right && at > x) {
      at = x
      down += tall
    }
    if (below) {
      sheet.run(at + inset, down, item.said)
      sheet.run(at, down + step, [labelPart(item.label, item.id)], { size: small })
    } else {
      sheet.run(at, down, [labelPart(item.label, item.id)], { size: small })
      sheet.run(at + inset, down + step, item.said)
    }
    at += need
  }
  return down + tall
}

/** Stacked headings over one row of values, as on the leaf of a ledger. */
export function underHeads(sheet: Sheet, { x, right, y }: Region, items: readonly Item[]): number {
  const { roll } = sheet
  const size = sheet.size * roll.between(0.7, 1)
  let at = x
  let down = y
  for (const item of items) {
    const [first = '', ...rest] = item.label.split(' ')
    const cut = Math.max(1, Math.ceil(rest.length / 2))
    const lines =
      rest.length === 0
        ? [first]
        : [[first, ...rest.slice(0, cut - 1)].join(' '), rest.slice(cut - 1).join(' ')]
    const need =
      Math.max(...lines.map((line) => sheet.widthOf(line, size)), sheet.widthOf(item.said)) +
      roll.between(10, 40)
    if (at + need > right && at > x) {
      at = x
      down += size * 1.25 * 2 + sheet.line * 1.6
    }
    lines.forEach((line, nth) => {
      sheet.run(at, down + nth * size * 1.25, [labelPart(line, nth === 0 ? item.id : 0)], { size })
    })
    sheet.run(at + roll.between(0, 6), down + size * 2.7, item.said)
    at += need
  }
  return down + size * 1.25 * 2 + sheet.line * 1.7
}

/** One way of laying out a list of items, chosen once for a page. */
export function layout(sheet: Sheet): (region: Region, items: readonly Item[]) => number {
  const { roll } = sheet
  const way = roll.pick(['left', 'left', 'left', 'above', 'below', 'heads'])
  const columns = roll.pick([1, 1, 2, 2, 3])
  return (region, items) => {
    if (items.length === 0) return region.y
    const narrow = region.right - region.x < 260
    if (way === 'left') return leftOf(sheet, region, items, narrow ? 1 : columns)
    if (way === 'heads') return underHeads(sheet, region, items)
    return inCells(sheet, region, items, way === 'below')
  }
}
