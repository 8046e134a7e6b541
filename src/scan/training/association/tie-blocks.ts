import { labelOf, nameOf } from './labels.ts'
import { type Block, factOf, factsOf, labelPart, partNamed, valueParts } from './parts.ts'
import type { Component, Fact, Permit } from './permit.ts'
import { shortName } from './running-blocks.ts'
import type { Said, Sheet } from './sheet.ts'
import { tableOf } from './table-blocks.ts'

const POINTS: Partial<Record<string, string>> = {
  tank: 'tank cover|tank|septic tank|tank inlet|S.T. cover|center of tank|manhole|tank lid|ST|tank outlet',
  'pump-chamber': 'pump tank|pump chamber|dose tank cover',
  'distribution-box': 'D-box|dist. box|DB|D.B.|box|d. box',
  'seepage-pit': 'pit|pit cover|dry well|center of pit|S.P.',
  cesspool: 'cesspool|cesspool cover',
  trench: 'end of line|trench|start of line 1|end of trench',
  bed: 'bed|cor. of bed|near corner of bed',
}
const pointOf = (sheet: Sheet, component: Component): string =>
  sheet.roll.of(POINTS[component.kind] ?? shortName(sheet, component.kind))

type Tied = { readonly component: Component; readonly a: Fact; readonly b: Fact }
const tiedOf = (sheet: Sheet, permit: Permit): Tied[] =>
  permit.components.flatMap((component) => {
    const [a, b] = [factOf(component, 'tieA'), factOf(component, 'tieB')]
    return a && b && !component.existing && sheet.roll.chance(0.85) ? [{ component, a, b }] : []
  })

/** Which corners the ties run from: `A = rear left corner of house`. */
export const cornersBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const lead = roll.pick([
    'A = ',
    'A: ',
    'A - ',
    'Corner A: ',
    'Pt. A ',
    'Point A is ',
    '(A) ',
    'A is the ',
    'Ref. A: ',
  ])
  let { y, x } = region
  const beside = roll.chance(0.4)
  const isOne = roll.chance(0.75)
  for (const [letter, f] of [
    ['A', 'cornerA'],
    ['B', 'cornerB'],
  ] as const) {
    const [fact] = factsOf(permit, f)
    const id = sheet.label()
    const end = sheet.run(x, y, [
      labelPart(lead.replace('A', letter).trimEnd(), id),
      ' ',
      ...valueParts(sheet, fact!, id),
    ])
    if (beside && end < region.x + (region.right - region.x) * 0.55) x = end + roll.between(15, 60)
    else {
      x = region.x
      y += sheet.line
    }
  }
  if (isOne) {
    const [fact] = factsOf(permit, 'baseline')
    const id = sheet.label()
    sheet.run(x, y, [
      labelPart(roll.of('A to B|A-B|A to B =|Distance A to B|A to B:|Baseline|AB'), id),
      roll.of(' | = | - |: '),
      ...valueParts(sheet, fact!, id),
    ])
    y += sheet.line
  }
  return y + (x === region.x ? 0 : sheet.line)
}

/** Ties in a table, in lines, or behind letters and figures: `A-1 23'-6"`. */
export const tiesBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const tied = tiedOf(sheet, permit)
  let y = roll.chance(0.75) ? cornersBlock(sheet, region, permit) : region.y
  if (tied.length === 0) return y
  const bare = roll.chance(0.2)
  const value = (fact: Fact, id: number): Said[] => valueParts(sheet, fact, id, bare)
  switch (roll.whole(0, 5)) {
    case 0: {
      const ids = [sheet.label(), sheet.label()]
      const heads = roll.pick([
        ['From A', 'From B'],
        ['A', 'B'],
        ['TO A', 'TO B'],
        ['Corner A', 'Corner B'],
        ['Dist. A', 'Dist. B'],
      ])
      const turned = roll.chance(0.25)
      const names = tied.map(({ component }) => partNamed(sheet, component, pointOf(sheet, component)))
      return turned
        ? tableOf(
            sheet,
            { ...region, y },
            ['', ...names],
            ids.map((id, at) => [
              [labelPart(heads[at]!, id)],
              ...tied.map((it) => value(at === 0 ? it.a : it.b, id)),
            ]),
          )
        : tableOf(
            sheet,
            { ...region, y },
            [roll.of('Point|To|Item|Ties||LOCATION'), ...heads.map((head, at) => labelPart(head, ids[at]!))],
            tied.map((it, row) => [[names[row]!], value(it.a, ids[0]!), value(it.b, ids[1]!)]),
          )
    }
    case 1: {
      // Named points: a legend says what 1, 2 and 3 are.
      const style = roll.pick(['A-1', 'A1', 'A to 1', 'A - 1', '1-A'])
      const order = roll.chance(0.5)
      const write = (letter: 'A' | 'B', nth: number, fact: Fact): void => {
        const id = sheet.label()
        sheet.run(region.x, y, [
          labelPart(style.replace('A', letter).replace('1', String(nth)), id),
          roll.of(' | = |  |: | - '),
          ...value(fact, id),
        ])
        y += sheet.line
      }
      const legend = (): void => {
        const inline = roll.chance(0.5)
        let x = region.x
        tied.forEach(({ component }, at) => {
          x =
            sheet.run(x, y, [
              String(at + 1),
              roll.of(' = | - |. |: |='),
              partNamed(sheet, component, pointOf(sheet, component)),
            ]) + 14
          if (!inline) {
            x = region.x
            y += sheet.line
          }
        })
        if (inline) y += sheet.line
      }
      if (order) legend()
      if (roll.chance(0.5)) {
        tied.forEach(({ a }, at) => {
          write('A', at + 1, a)
        })
        tied.forEach(({ b }, at) => {
          write('B', at + 1, b)
        })
      } else
        tied.forEach(({ a, b }, at) => {
          write('A', at + 1, a)
          write('B', at + 1, b)
        })
      if (!order) legend()
      return y
    }
    case 2: {
      const to = roll.of(' to | to | - |-> ')
      for (const { component, a, b } of tied)
        for (const [letter, fact] of [
          ['A', a],
          ['B', b],
        ] as const) {
          const id = sheet.label()
          sheet.run(region.x, y, [
            labelPart(letter, id),
            to,
            partNamed(sheet, component, pointOf(sheet, component)),
            roll.of(' | = |  |: | - '),
            ...value(fact, id),
          ])
          y += sheet.line
        }
      return y
    }
    case 3: {
      for (const { component, a, b } of tied) {
        const ids = [sheet.label(), sheet.label()]
        const name = partNamed(
          sheet,
          component,
          roll.chance(0.5) ? pointOf(sheet, component) : nameOf(sheet, component.kind),
        )
        const said = roll.pick<() => Said[]>([
          () => [
            name,
            roll.of(': |, | - | '),
            ...value(a, ids[0]!),
            ' ',
            labelPart(roll.of('from A|fr. A|to A|from cor. A'), ids[0]!),
            roll.of(', | and |; '),
            ...value(b, ids[1]!),
            ' ',
            labelPart('from B', ids[1]!),
          ],
          () => [
            name,
            ' ',
            labelPart('A', ids[0]!),
            roll.of(' | = |: |='),
            ...value(a, ids[0]!),
            roll.of('  |, |; '),
            labelPart('B', ids[1]!),
            roll.of(' | = |: |='),
            ...value(b, ids[1]!),
          ],
          () => [
            name,
            roll.of(' ties: | located | '),
            ...value(a, ids[0]!),
            ' ',
            labelPart('A', ids[0]!),
            roll.of(' / |, | & '),
            ...value(b, ids[1]!),
            ' ',
            labelPart('B', ids[1]!),
          ],
        ])()
        y = sheet.flow(region.x, y, region.right - region.x, said)
        y += sheet.size * 0.3
      }
      return y
    }
    default: {
      for (const { component, a, b } of tied) {
        const ids = [sheet.label(), sheet.label()]
        const name = nameOf(sheet, component.kind)
        const beside = roll.chance(0.5)
        const end = sheet.run(region.x, y, [
          labelPart(beside ? `${name} ${labelOf(sheet, 'tieA')}` : `${name}:`, beside ? ids[0]! : 0),
          beside ? ': ' : ' ',
          ...(beside ? [] : [labelPart(labelOf(sheet, 'tieA'), ids[0]!), ' ']),
          ...value(a, ids[0]!),
        ])
        sheet.run(end + 20, y, [labelPart(labelOf(sheet, 'tieB'), ids[1]!), ' ', ...value(b, ids[1]!)])
        y += sheet.line
      }
      return y
    }
  }
}
