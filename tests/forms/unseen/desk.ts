import type { Dice } from '../dice.ts'
import type { Face, Sheet } from '../sheet.ts'

/** What a family draws with: one sheet for each permit of the page, and its own throws. */
export type Desk = { readonly sheets: readonly Sheet[]; readonly roll: Dice; readonly face: Face }

/** How clerks write what the record spells out (common practice). */
const MATERIALS: Record<string, readonly string[]> = {
  concrete: ['conc.', 'Concrete', 'precast', 'conc'],
  'concrete-block': ['conc. block', 'Block'],
  steel: ['steel', 'Metal'],
  fiberglass: ['fibergls.', 'Fiberglass'],
  polyethylene: ['poly', 'plastic'],
  'cast-iron': ['C.I.', 'cast iron'],
  'vitrified-clay': ['VCP', 'clay tile', 'vit. clay'],
  pvc: ['PVC', 'Sch. 40'],
}
export const material = (roll: Dice, value: string): string => roll.pick(MATERIALS[value] ?? [value])

/** A length as this page writes it: `60 ft` is `60'` or `60 ft.`, `36 in` is `36"`. */
export function measure(roll: Dice, value: string): string {
  const feet = /^(\d+) ft$/.exec(value)?.[1]
  if (feet) return roll.pick([`${feet}'`, `${feet} ft.`, `${feet}'-0"`])
  const inches = /^(\d+) in$/.exec(value)?.[1]
  if (inches) return roll.pick([`${inches}"`, `${inches} in.`])
  return value.replace(/-0"$/, roll.chance(0.4) ? '' : '-0"')
}

export const gallons = (roll: Dice, value: string): string =>
  roll.pick([value, value.replace(' gal', ' GAL.'), value.replace(',', '').replace(' gal', ' gals.')])

const WORK: Record<string, readonly string[]> = {
  new: ['new', 'New system'],
  repair: ['repair', 'Repair'],
  alteration: ['alteration', 'Alteration'],
  abandonment: ['abandonment'],
}
export const work = (roll: Dice, value: string): string => roll.pick(WORK[value] ?? [value])

export const OWNERS = [
  'Orrin Tabb',
  'L. Fenwick',
  'Mrs. Dell Carrow',
  'Haskell Bros.',
  'E. Wynn',
  'Tom Ardley',
] as const

/** The drainfield of a permit, and what it goes by. */
export function fieldOf(sheet: Sheet): {
  readonly at: string
  readonly kind: 'seepage-pit' | 'trench' | 'bed'
} {
  for (const kind of ['seepage-pit', 'trench', 'bed'] as const) {
    const index = sheet.find(kind)
    if (index >= 0) return { at: `/components/${index}`, kind }
  }
  throw new Error('a permit without a field')
}
export const partAt = (sheet: Sheet, kind: string): string | null => {
  const index = sheet.find(kind)
  return index < 0 ? null : `/components/${index}`
}
