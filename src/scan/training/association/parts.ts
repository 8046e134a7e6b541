import type { UnitOf } from '../../../reading/association/fields.ts'
import { nameOf } from './labels.ts'
import type { Component, Fact, Permit } from './permit.ts'
import type { Part, Said, Sheet, Tag } from './sheet.ts'
import { NOTHINGS } from './words.ts'

/** Where a block may write: from x to right, from y down. */
export type Region = { readonly x: number; readonly right: number; readonly y: number }
export type Block = (sheet: Sheet, region: Region, permit: Permit) => number

export const tagOf = (sheet: Sheet, { f, of, comp, existing }: Fact, label: number, unit: UnitOf): Tag => ({
  f,
  of,
  permit: sheet.permit,
  comp: comp < 0 ? -1 : sheet.permit * 100 + comp,
  existing,
  unit,
  label,
})

/** The parts of a value: sometimes an earlier one struck over before it. `bare`: something else gives its unit. */
export function valueParts(sheet: Sheet, fact: Fact, label: number, bare = false): Said[] {
  const { t, unit } = fact.write(bare)
  const value: Part = { t, v: tagOf(sheet, fact, label, unit) }
  if (!sheet.roll.chance(0.025)) return [value]
  const old = fact.write(bare).t.replace(/\d/, () => String(sheet.roll.whole(1, 9)))
  return [{ t: old, struck: true }, ' ', value]
}

export const labelPart = (t: string, label: number): Part => ({ t, l: label })

/** A blank, an N/A, a dash: what stands where nothing is said. */
export const nothing = (sheet: Sheet): string => (sheet.roll.chance(0.5) ? '' : sheet.roll.of(NOTHINGS))

/** The name of a component, which says that there is one. */
export function partNamed(
  sheet: Sheet,
  component: Component,
  t = nameOf(sheet, component.kind),
  label = 0,
): Part {
  return {
    t,
    v: {
      f: 'part',
      of: component.kind,
      permit: sheet.permit,
      comp: sheet.permit * 100 + component.id,
      existing: component.existing,
      unit: 'own',
      label,
    },
  }
}

export const factsOf = (permit: Permit, ...fields: readonly string[]): Fact[] =>
  fields.flatMap((f) => permit.facts.find((fact) => fact.f === f) ?? [])

export const factOf = (component: Component, ...fields: readonly string[]): Fact | undefined =>
  component.facts.find(({ f }) => fields.includes(f))
