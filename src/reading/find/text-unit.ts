import type { Unit } from '../layout/units.ts'
import { type Atom, atomsIn } from '../lexicon/atoms.ts'
import { type Group, groupsIn, type Mention } from './groups.ts'

/** A text of the page with the known words and groups in it; `taken` are the stretches that a value was read from. */
export type TextUnit = Unit & {
  readonly atoms: readonly Atom[]
  readonly groups: readonly Group[]
  readonly taken: { readonly start: number; readonly end: number }[]
}

export function textUnit(unit: Unit, misread: boolean): TextUnit {
  const atoms = atomsIn(unit.strip.text, misread)
  return { ...unit, atoms, groups: groupsIn(unit.strip.text, atoms), taken: [] }
}

export const isTaken = (unit: TextUnit, start: number, end: number): boolean =>
  unit.taken.some((range) => start < range.end && end > range.start)

/** Reading order of a place on the page: by line, then from left to right. */
export const orderOf = (unit: Unit, start: number): number =>
  unit.strip.spots[0]!.page * 1e6 +
  unit.row * 1e3 +
  unit.place * 50 +
  (start / (unit.strip.text.length + 1)) * 50

/** Only a component's name stands here: a heading, the name of a row or of a column. */
export function soleMention(unit: TextUnit): Mention | undefined {
  const [group, ...more] = unit.groups
  if (group?.is !== 'mention' || more.length > 0) return undefined
  const rest = unit.strip.text.slice(0, group.start) + unit.strip.text.slice(group.end)
  const letters = rest
    .replace(
      /\b(?:system|data|information|details|section|part|component|items?|the|and|or|type|of|installed|existing|proposed|new|no|sewage|\d+|[IVX]+|[a-h])\b/gi,
      '',
    )
    .replace(/[^A-Za-z0-9]/g, '')
  return letters.length <= 2 ? group : undefined
}
