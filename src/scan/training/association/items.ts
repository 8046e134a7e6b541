import { cased, labelOf, nameOf } from './labels.ts'
import { type Block, factOf, labelPart, nothing, type Region, tagOf, valueParts } from './parts.ts'
import type { Component, Fact, Permit } from './permit.ts'
import type { Said, Sheet } from './sheet.ts'
import { sides } from './sides.ts'
import { ASIDE, SECTIONS } from './words.ts'

/** A label and what stands for it: a value, something that is not wanted, or nothing. */
export type Item = {
  readonly label: string
  readonly id: number
  readonly said: readonly Said[]
  readonly wide: boolean
}

const LONG = new Set(['address', 'remarks', 'cornerA', 'cornerB', 'owner', 'installer'])

const UNIT_WORDS = {
  ft: '(ft)|(ft.)|ft.|(feet)|in feet|, ft|(FT)',
  in: '(in)|(in.)|in.|(inches)|in inches|, in.|(IN)',
  gal: '(gal)|(gals.)|gal.|(gallons)|in gallons|, gal.|(GAL)',
  own: '',
} as const

/** An item for a fact. The unit may be named by the label, or left to custom. */
export function itemOf(sheet: Sheet, fact: Fact, name = ''): Item {
  const { roll } = sheet
  const id = sheet.label()
  let label = labelOf(sheet, fact.f, 'before', fact.of)
  if (name !== '') label = roll.chance(0.75) ? `${name} ${label}` : `${label} of ${name}`
  // The part's own name asks for what it is known by: `Septic tank: 1000 GAL.`, `PIPE: Orangeburg`.
  const isPipe = fact.of === 'building-sewer' || fact.of === 'effluent-line'
  if (name !== '' && roll.chance(fact.f === 'capacity' ? 0.3 : fact.f === 'material' && isPipe ? 0.4 : 0))
    label = name
  if (fact.f === 'material' && isPipe && roll.chance(0.12))
    label = cased(sheet, roll.of('pipe|pipe material|kind of pipe'))
  const bare = roll.chance(0.5)
  const value = bare ? fact.write(true) : fact.write(false)
  if (value.unit !== 'own' && roll.chance(0.75)) label += ` ${roll.of(UNIT_WORDS[value.unit])}`
  const fixed: Fact = { ...fact, write: () => value }
  return { label, id, said: valueParts(sheet, fixed, id), wide: LONG.has(fact.f) }
}

/** An item that asks and has no answer. */
export function blankItem(sheet: Sheet, fact: Fact, name = ''): Item {
  const label = labelOf(sheet, fact.f, 'before', fact.of)
  return {
    label: name ? `${name} ${label}` : label,
    id: 0,
    said: [nothing(sheet) || (sheet.roll.chance(0.2) ? sheet.roll.of('gal.|ft.|in.|"|____') : '')],
    wide: false,
  }
}

export function asideItem(sheet: Sheet): Item {
  const [labels, values] = sheet.roll.pick(ASIDE)
  return {
    label: cased(sheet, sheet.roll.of(labels)),
    id: 0,
    said: [sheet.roll.chance(0.2) ? nothing(sheet) : sheet.roll.of(values)],
    wide: false,
  }
}

/** Items of some facts, some left blank, distractors among them, in an order of the page's own. */
export function itemsOf(sheet: Sheet, facts: readonly Fact[], name = '', aside = 0.25): Item[] {
  const { roll } = sheet
  const items = facts.map((fact) =>
    roll.chance(0.12) ? blankItem(sheet, fact, name) : itemOf(sheet, fact, name),
  )
  const extra = Array.from({ length: Math.round(items.length * roll.between(0, 2 * aside)) }, () =>
    asideItem(sheet),
  )
  return roll.chance(0.8) ? roll.shuffled([...items, ...extra]) : [...items, ...extra]
}

export const permitFacts = (sheet: Sheet, permit: Permit, share = sheet.roll.between(0.4, 0.95)): Fact[] =>
  permit.facts.filter(({ f }) =>
    sheet.roll.chance(
      f === 'number' || f === 'parcelNumber'
        ? 0.85
        : f === 'remarks' || f.startsWith('corner') || f === 'baseline'
          ? share * 0.3
          : share,
    ),
  )

export const componentFacts = (
  sheet: Sheet,
  component: Component,
  share = sheet.roll.between(0.4, 0.95),
): Fact[] =>
  component.facts.filter(({ f }) =>
    sheet.roll.chance(
      f.startsWith('tie')
        ? 0.15
        : f === 'totalLength' || f === 'area' || f === 'rate' || f === 'wallThickness' || f === 'insideHeight'
          ? share * 0.35
          : share,
    ),
  )

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

/** A form: the permit's own items, then each component's, under headings or with its name in the label. */
export const formBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const lay = layout(sheet)
  const headed = roll.chance(0.55)
  let { y } = region
  const gap = (): number => sheet.size * roll.between(0.3, 1.6)
  y = lay({ ...region, y }, itemsOf(sheet, permitFacts(sheet, permit))) + gap()
  for (const component of roll.chance(0.8) ? permit.components : roll.shuffled(permit.components)) {
    const name = nameOf(sheet, component.kind)
    const old = component.existing
      ? sheet.roll.of('Existing |EXISTING |Exist. |Old |Ex. ')
      : roll.chance(0.15)
        ? 'New '
        : ''
    const all = componentFacts(sheet, component)
    const sized = roll.chance(0.25) ? sizeItem(sheet, component, headed ? '' : old + name) : null
    const facts = sized ? all.filter(({ f }) => !SIZES.has(f)) : all
    if (facts.length === 0) continue
    const more = sized ? [sized] : []
    if (headed) {
      const heading = `${old}${name}${roll.of('|:| -|.')}`
      const beside = roll.chance(0.3)
      sheet.run(region.x, y, [heading])
      const indent = beside ? sheet.widthOf(heading) + 12 : roll.between(0, 24)
      if (!beside) y += sheet.line
      y =
        lay(
          { x: region.x + Math.min(indent, 160), right: region.right, y },
          itemsOf(sheet, facts, '', 0.08),
        ) + gap()
    } else y = lay({ ...region, y }, [...more, ...itemsOf(sheet, facts, old + name, 0.08)]) + gap()
    if (y > sheet.height - 40) break
  }
  if (roll.chance(0.2)) sheet.run(region.x, y, [roll.of(SECTIONS)])
  return y + gap()
}

/** A part that the form asks about and that was not put in: labels and blanks. */
export function emptyPart(sheet: Sheet, region: Region, component: Component): number {
  const items = component.facts
    .slice(0, 4)
    .map((fact) => blankItem(sheet, fact, nameOf(sheet, component.kind)))
  return layout(sheet)(region, items)
}

export const hasFact = (component: Component, f: string): boolean => factOf(component, f) !== undefined

const SIZES = new Set(['length', 'width', 'liquidDepth', 'absorbingDepth', 'diameter', 'depth', 'count'])

/** All sides behind one label: `Dimensions: 8'-6" x 4'-0" x 4'-0" L.D.`, `Size 3-50' x 36"`. */
function sizeItem(sheet: Sheet, component: Component, name: string): Item | null {
  const { roll } = sheet
  const id = sheet.label()
  const label = [
    name,
    cased(
      sheet,
      roll.of(
        'dimensions|size|inside dimensions|dimensions l x w|measurements|l x w x d|size of each|inside size',
      ),
    ),
  ]
    .filter(Boolean)
    .join(' ')
  if (component.kind !== 'tank' && component.kind !== 'pump-chamber') {
    const said = sides(sheet, component)
    return said.length > 0 ? { label, id, said, wide: true } : null
  }
  const list = ['length', 'width', 'liquidDepth'].map((f) => factOf(component, f))
  if (list.some((fact) => fact === undefined)) return null
  const times = roll.of(' x |x| X | by ')
  const bare = roll.chance(0.3)
  const said = list.flatMap((fact, nth): Said[] => {
    const { t, unit } = fact!.write(bare)
    return [...(nth > 0 ? [times] : []), { t, v: tagOf(sheet, fact!, id, unit) }]
  })
  return { label, id, said: [...said, roll.of('|| L.D.| LD| deep| liq.')], wide: true }
}
