import { type Item, layout } from './arrange.ts'
import { cased, labelOf, nameOf } from './labels.ts'
import { type Block, factOf, nothing, tagOf, valueParts } from './parts.ts'
import type { Component, Fact, Permit } from './permit.ts'
import type { Said, Sheet } from './sheet.ts'
import { sides } from './sides.ts'
import { ASIDE, SECTIONS } from './words.ts'

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

const SIZES = new Set(['length', 'width', 'liquidDepth', 'effectiveDepth', 'diameter', 'depth', 'count'])

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
