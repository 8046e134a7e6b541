import type { Field, ToldOf } from '../../../reading/association/fields.ts'
import { asideItem, componentFacts, itemOf, permitFacts } from './items.ts'
import { cased, labelOf, nameOf } from './labels.ts'
import { type Block, factsOf, labelPart, nothing, partNamed, type Region, valueParts } from './parts.ts'
import { MATERIALS_OF, type Permit } from './permit.ts'
import type { Said, Sheet } from './sheet.ts'

const TICKS = [
  ['[X]', '[ ]'],
  ['[X]', '[ ]'],
  ['[x]', '[ ]'],
  ['(X)', '( )'],
  ['☒', '☐'],
  ['☑', '☐'],
  ['X', ''],
  ['_X_', '___'],
  ['x', '_'],
  ['X', '__'],
  ['[X]', '[]'],
  ['(x)', '( )'],
  ['✓', ''],
] as const

type Choice = { readonly t: string; readonly said: Said | null }

/** Choices beside boxes in a line, one of them ticked. */
export function choices(
  sheet: Sheet,
  region: Region,
  lead: readonly Said[],
  list: readonly Choice[],
): number {
  const { roll } = sheet
  const [full, empty] = roll.pick(TICKS)
  const trailing = roll.chance(0.25) && full.length > 1
  const down = roll.chance(0.25)
  const gap = roll.between(1.5, 4) * sheet.size
  let { x, y } = region
  if (lead.length > 0) {
    x = sheet.run(x, y, lead) + gap * 0.6
    if (roll.chance(0.15)) {
      x = region.x + 20
      y += sheet.line
    }
  }
  const left = x
  for (const { t, said } of list) {
    const mark = said ? full : empty
    const parts: Said[] = trailing
      ? [said ?? t, ' ', mark]
      : mark === ''
        ? [said ?? t]
        : [mark, ' ', said ?? t]
    const need = sheet.widthOf(parts)
    if (!down && x + need > region.right && x > left) {
      x = left
      y += sheet.line
    }
    const end = sheet.run(x, y, parts)
    if (down) y += sheet.line
    else x = end + gap
  }
  return down ? y : y + sheet.line
}

const WORKS =
  'New|Repair|Alteration|Replacement|New installation|Addition|Abandonment|Other|Replace|Enlarge'.split('|')

export function workTick(sheet: Sheet, region: Region, permit: Permit): number {
  const { roll } = sheet
  const id = sheet.label()
  const list = roll.shuffled(WORKS).slice(0, roll.whole(2, 5))
  const ticked = roll.chance(0.9) ? roll.whole(0, list.length - 1) : -1
  const [kind] = factsOf(permit, 'kind')
  const lead = roll.chance(0.75) ? [labelPart(labelOf(sheet, 'kind'), id), roll.of(':||.')] : []
  return choices(
    sheet,
    region,
    lead,
    list.map((t, at) => {
      const shown = cased(sheet, t.toLowerCase())
      return {
        t: shown,
        said:
          at === ticked && shown !== 'Other'
            ? valueParts(
                sheet,
                { ...kind!, write: () => ({ t: shown, unit: 'own' }) },
                lead.length > 0 ? id : 0,
              ).at(-1)!
            : null,
      }
    }),
  )
}

const SYSTEMS: readonly ToldOf[] = [
  'trench',
  'bed',
  'seepage-pit',
  'cesspool',
  'chambers',
  'mound',
  'drip-field',
  'distribution-box',
  'pump-chamber',
  'effluent-filter',
  'tank',
]

/** The parts of a system as choices: what is ticked is there. */
export function partTick(sheet: Sheet, region: Region, permit: Permit): number {
  const { roll } = sheet
  const others = roll
    .shuffled(SYSTEMS)
    .filter((kind) => !permit.components.some((component) => component.kind === kind))
    .slice(0, roll.whole(1, 3))
  const label = roll.chance(0.6)
    ? [
        roll.of(
          'Type of system:|System|SYSTEM TYPE|Consisting of|Disposal by|Check:|Equipment|Type of disposal',
        ),
      ]
    : []
  const id = 0
  const list: Choice[] = [
    ...permit.components
      .filter(({ kind, existing }) => !existing && SYSTEMS.includes(kind) && roll.chance(0.7))
      .map((component) => {
        const part = partNamed(sheet, component, nameOf(sheet, component.kind), id)
        return { t: part.t, said: part }
      }),
    ...others.map((kind) => ({ t: nameOf(sheet, kind), said: null })),
    ...(roll.chance(0.3)
      ? [{ t: roll.of('Other|Privy|Sand filter|Grease trap|Holding tank'), said: null }]
      : []),
  ]
  return choices(sheet, region, label, roll.shuffled(list))
}

export function materialTick(sheet: Sheet, region: Region, permit: Permit): number {
  const { roll } = sheet
  const component = roll.pick(permit.components)
  const fact = component.facts.find(({ f }) => f === 'material')
  if (!fact) return region.y
  const id = sheet.label()
  const all = roll
    .shuffled([...new Set((MATERIALS_OF[component.kind] ?? 'concrete|steel').split('|'))])
    .slice(0, 4)
  const ticked = roll.chance(0.85) ? 0 : -1
  const named = roll.chance(0.7) ? `${nameOf(sheet, component.kind)} ` : ''
  return choices(
    sheet,
    region,
    [
      labelPart(named + (roll.chance(0.6) || named === '' ? labelOf(sheet, 'material') : ''), id),
      roll.of(':|'),
    ],
    roll.shuffled(
      all.map((t, at) => ({
        t,
        said:
          at === ticked && named !== ''
            ? valueParts(sheet, { ...fact, write: () => ({ t, unit: 'own' }) }, id).at(-1)!
            : null,
      })),
    ),
  )
}

/** Choices and questions in one list, answered by ticks or in writing; nothing is said where nothing is ticked. */
export const tickBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  let { y } = region
  const parts = roll.shuffled([workTick, partTick, materialTick, materialTick]).slice(0, roll.whole(1, 4))
  for (const part of parts) y = part(sheet, { ...region, y }, permit) + sheet.size * roll.between(0, 0.8)
  return y
}

const QUESTIONS: Partial<Record<Field, string>> = {
  bedrooms: 'How many bedrooms?|Number of bedrooms in dwelling?|How many bedrooms will the house have',
  capacity:
    'What is the capacity of the septic tank?|Size of tank in gallons|Liquid capacity of tank?|How many gallons does the tank hold?',
  material: 'Of what is it made?|What material?|Material used',
  count: 'How many?|How many lines?|Number installed',
  length: 'How long?|Length of each?|What is the length',
  width: 'How wide?|Width?|What is the width',
  kind: 'Is this a new system or a repair?|What work is to be done?|Nature of the work',
  number: 'Permit number|Under what permit?',
  approvedOn: 'When was the work approved?|Date of approval|When inspected and approved',
  issuedOn: 'When was the permit issued?|Date permit was issued',
  installer: 'Who did the work?|By whom installed?|Name of contractor',
  owner: 'Who owns the property?|Name of owner',
  installedOn: 'When was it put in?|Date system was installed',
  address: 'Where is the property?|Location of premises|Address of the site',
  parcelNumber: "What is the assessor's parcel number?|Tax parcel number",
  soilTexture: 'What kind of soil?|Nature of soil|Character of the soil',
  percRateMpi: 'Rate of percolation, minutes per inch|Result of percolation test (min. per inch)',
  effectiveDepth: 'How deep is the gravel under the pipe?|Depth of stone below the line|Depth below inlet',
  designFlowGpd: 'Daily flow expected, gallons|Estimated flow per day?',
}

/** Numbered questions with answers beside or below; the numbers say nothing. */
export const questionBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  let { y } = region
  let number = roll.chance(0.8) ? 1 : roll.whole(5, 30)
  const style = roll.of('.|)|.)|-|a')
  const below = roll.chance(0.25)
  const at = region.x + (region.right - region.x) * roll.between(0.4, 0.7)
  const aligned = roll.chance(0.6)
  const lead = (): string => {
    const text = style === 'a' ? `${String.fromCharCode(96 + ((number - 1) % 26) + 1)}.` : `${number}${style}`
    number += 1
    return text
  }
  const ask = (label: string, id: number, said: readonly Said[]): void => {
    let end = sheet.run(region.x, y, [lead(), ' ', labelPart(label, id), roll.of('||:| ....| ______')])
    if (below) {
      y += sheet.line
      end = region.x + roll.between(15, 40)
    } else if (aligned) end = Math.max(end + 5, at)
    else end += roll.between(5, 15)
    sheet.run(end, y, said)
    y += sheet.line * roll.between(1, 1.2)
  }
  const question = (f: Field): string | undefined => {
    const list = QUESTIONS[f]
    return list && roll.chance(0.6) ? cased(sheet, roll.of(list)).replace(/\?$/, roll.of('?|')) : undefined
  }
  for (const fact of roll.shuffled(permitFacts(sheet, permit))) {
    if (fact.f === 'kind' && roll.chance(0.5)) {
      sheet.run(region.x, y, [lead()])
      y = workTick(sheet, { ...region, x: region.x + 22, y }, permit)
      continue
    }
    const item = itemOf(sheet, fact)
    ask(question(fact.f) ?? item.label, item.id, roll.chance(0.9) ? item.said : [nothing(sheet)])
    if (roll.chance(0.2)) {
      const aside = asideItem(sheet)
      ask(aside.label, 0, aside.said)
    }
    if (y > sheet.height - 60) return y
  }
  for (const component of permit.components) {
    const name = nameOf(sheet, component.kind)
    const headed = roll.chance(0.5)
    if (headed) {
      sheet.run(region.x, y, [lead(), ' ', name, roll.of(':|')])
      y += sheet.line
    }
    for (const fact of componentFacts(sheet, component)) {
      const item = itemOf(sheet, fact, headed ? '' : name)
      ask(
        (headed ? question(fact.f) : undefined) ?? item.label,
        item.id,
        roll.chance(0.88) ? item.said : [nothing(sheet)],
      )
      if (y > sheet.height - 50) return y
    }
  }
  return y
}
