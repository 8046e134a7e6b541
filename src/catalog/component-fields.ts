import { PERMIT_ACTIONS } from './choices.ts'
import { FOUND } from './component-findings.ts'
import { MEASURES } from './component-measures.ts'
import type { Fields } from './field.ts'
import { COMPONENT_KINDS } from './kinds.ts'

/** Every fact of a component: what names it, what is measured of it, what an inspection finds. */
export const COMPONENT_FIELDS = {
  /** The component's name on the paper, unique within the permit: `tank 1`. */
  tag: { value: 'line', most: 60, by: 'permit', needed: true, example: 'tank 1' },
  /** The as-built's key of the component this is taken to be; null where it answers to nothing on record. */
  key: { value: 'line', most: 160, by: 'inspection' },
  label: { value: 'line', most: 60, by: 'inspection', needed: true, example: 'tank' },
  kind: { value: 'choice', choices: COMPONENT_KINDS, by: 'both', needed: true },
  action: { value: 'choice', choices: PERMIT_ACTIONS, default: 'install', by: 'permit' },
  /** Tags of components already in the ground that this one takes the place of. */
  replaces: { value: 'lines', most: 60, default: [], by: 'permit' },
  ...MEASURES,
  ...FOUND,
  note: { value: 'prose', most: 2000, by: 'both' },
} as const satisfies Fields
