import type { Method } from '../../../../measure/methods.ts'
import { MATERIALS, type Material, VESSEL_SHAPES, type VesselShape } from '../../../../records/component.ts'
import { CONDITIONS } from '../../../../records/findings.ts'
import { headed } from '../../words/plain.ts'

export type Choice = { readonly value: string; readonly says: string }

/** How a field is asked for. A length carries the ways it can be taken, the usual one first. */
export type Field = {
  readonly name: string
  readonly label: string
  readonly hint?: string
} & (
  | { readonly as: 'length'; readonly ways: readonly [Method, ...Method[]] }
  | { readonly as: 'level'; readonly ways: readonly [Method, ...Method[]] }
  | { readonly as: 'volume' | 'whole' | 'line' | 'prose' }
  | { readonly as: 'list' | 'buttons'; readonly choices: readonly Choice[] }
)

type Ways = readonly [Method, ...Method[]]

/** Ways to take a length by what is measured; the first is what is assumed until somebody says another. */
export const INSIDE: Ways = ['inside-tape', 'outside-tape', 'laser-meter', 'sounding-rod', 'probe', 'by-eye']
export const DEPTH: Ways = ['sounding-rod', 'liquid-level-rule', 'inside-tape', 'rigid-rule', 'by-eye']
export const INVERT: Ways = ['liquid-level-rule', 'rigid-rule', 'sounding-rod', 'inside-tape', 'by-eye']
export const GROUND: Ways = ['ground-tape', 'laser-meter', 'wheel', 'pacing', 'by-eye']
export const COVER: Ways = ['probe', 'rigid-rule', 'inside-tape', 'by-eye']
export const RULE: Ways = ['rigid-rule', 'inside-tape', 'by-eye']
export const PIT: Ways = ['inside-tape', 'laser-meter', 'sounding-rod', 'probe', 'ground-tape', 'by-eye']
export const CAMERA: Ways = ['wheel', 'ground-tape', 'by-eye']

/** The ways in as few words as a list on a phone has room for. */
export const WAY_WORDS: { readonly [M in Method]: string } = {
  'inside-tape': 'tape, inside',
  'outside-tape': 'tape, outside',
  'ground-tape': 'tape, ground',
  'rigid-rule': 'rule or caliper',
  'laser-meter': 'laser',
  'sounding-rod': 'rod',
  'liquid-level-rule': 'level rule',
  probe: 'probe',
  wheel: 'wheel',
  pacing: 'paced',
  'by-eye': 'by eye',
  'record-drawing': 'off a drawing',
  'stated-on-paper': 'off a paper',
}

export const length = (name: string, label: string, ways: Ways, hint?: string): Field => ({
  name,
  label,
  as: 'length',
  ways,
  ...(hint ? { hint } : {}),
})

const SHAPES: { readonly [S in VesselShape]: string } = {
  rectangular: 'Box: rectangular',
  'vertical-cylinder': 'Round, standing',
  'horizontal-cylinder': 'Round, lying',
  'horizontal-oval': 'Oval, lying',
  'vertical-oval': 'Oval, standing',
  sphere: 'Ball',
}
export const shape: Field = {
  name: 'shape',
  label: 'Shape',
  as: 'list',
  choices: VESSEL_SHAPES.map((value) => ({ value, says: SHAPES[value] })),
}

/** The usual materials of a thing first; all others may be there too. */
export const material = (...usual: readonly Material[]): Field => ({
  name: 'material',
  label: 'Material',
  as: 'list',
  choices: [...usual, ...MATERIALS.filter((other) => !usual.includes(other))].map((value) => ({
    value,
    says: MATERIAL_WORDS[value] ?? headed(value),
  })),
})
const MATERIAL_WORDS: { readonly [M in Material]?: string } = {
  pvc: 'PVC',
  abs: 'ABS',
  'bituminized-fiber': 'Bituminized fiber (tar paper)',
}

export const condition: Field = {
  name: 'condition',
  label: 'Condition',
  as: 'buttons',
  choices: CONDITIONS.map((value) => ({ value, says: headed(value) })),
}

const yesOrNo = (name: string, label: string): Field => ({
  name,
  label,
  as: 'buttons',
  choices: [
    { value: 'yes', says: 'Yes' },
    { value: 'no', says: 'No' },
  ],
})
export const lidSecured = yesOrNo('lidSecured', 'Is the cover secured against a child?')
export const riserToGrade = yesOrNo('riserToGrade', 'Does a riser bring it up to grade?')
export const conditionWords: Field = { name: 'conditionWords', label: 'What you saw', as: 'prose' }
export const note: Field = { name: 'note', label: 'Anything else', as: 'prose' }
export const compartments: Field = { name: 'compartments', label: 'Compartments', as: 'whole' }
export const count: Field = { name: 'count', label: 'How many alike', as: 'whole' }
export const capacity: Field = {
  name: 'capacity',
  label: 'Capacity marked on it',
  as: 'volume',
  hint: 'only if it is stamped or labeled',
}
