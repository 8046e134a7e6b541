import { CATALOG, fieldAt, pathOf } from '../../catalog/catalog.ts'
import type { Field, Fields } from '../../catalog/field.ts'
import { COMPONENT_KINDS } from '../../catalog/kinds.ts'
import type { ImportKind } from '../../store/imports.ts'
import { describedField } from '../../words/fields.ts'

/** A column that a file of one kind can have: what it fills, and how people head it (compared without case and signs). */
export type Target = {
  readonly to: string
  readonly says: string
  readonly headings: readonly string[]
}

const PARCEL: Target = {
  to: 'parcel',
  says: 'the parcel number, in any spelling; an old number works',
  headings: [
    'parcel',
    'parcel number',
    'parcel no',
    'parcel id',
    'pin',
    'apn',
    'pid',
    'tax parcel',
    'tax map no',
  ],
}
const ADDRESS: Target = {
  to: 'address',
  says: 'the site address; finds the parcel where no number is given',
  headings: [
    'address',
    'site address',
    'situs',
    'situs address',
    'property address',
    'location',
    'OriginalAddress1',
  ],
}

/** What the entry's own fields fill: a group by its parts is not headed by anything of its own. */
const entryTargets = (place: 'permit' | 'inspection'): readonly Target[] =>
  Object.entries(CATALOG[place] as Fields).flatMap(([to, field]) =>
    'parts' in field ? [] : [{ to, says: describedField(`${place}.${to}`), headings: field.aliases ?? [] }],
  )

const PARCELS: readonly Target[] = [
  { ...PARCEL, to: 'number', headings: [...PARCEL.headings, 'number'] },
  ADDRESS,
  {
    to: 'oldNumbers',
    says: 'earlier numbers, separated by ;',
    headings: [
      'old number',
      'old numbers',
      'former number',
      'former numbers',
      'previous number',
      'prior parcel',
    ],
  },
  {
    to: 'splitFrom',
    says: 'the number of the parcel it was split from',
    headings: ['split from', 'parent', 'parent parcel'],
  },
  {
    to: 'mergedFrom',
    says: 'the numbers of the parcels it was made from, separated by ;',
    headings: ['merged from', 'combined from'],
  },
  {
    to: 'changedOn',
    says: 'the day it was renumbered, split or merged',
    headings: ['changed', 'changed on', 'change date', 'effective', 'effective date'],
  },
  {
    to: 'retiredOn',
    says: 'the day it stopped being a parcel',
    headings: ['retired', 'retired on', 'inactive date'],
  },
]

const FIRM: Target = {
  to: 'firm',
  says: 'the inspection firm, by the name it has here',
  headings: ['firm', 'inspector', 'inspection firm', 'company', 'inspected by'],
}

const SYSTEM: Target = {
  to: 'system',
  says: 'which of the parcel’s systems, by its label; only where it has several',
  headings: ['system', 'system label'],
}

export const TARGETS: { readonly [K in ImportKind]: readonly Target[] } = {
  permits: [PARCEL, ADDRESS, SYSTEM, ...entryTargets('permit')],
  parcels: PARCELS,
  findings: [PARCEL, ADDRESS, SYSTEM, FIRM, ...entryTargets('inspection')],
}

/** What lies beside the entry of a permit or an inspection: whose it is. */
export const BESIDE: ReadonlySet<string> = new Set(['parcel', 'address', 'system', 'firm'])

/** What a row is no record without. A parcel is found by its number or its address. */
export const NEEDED: { readonly [K in ImportKind]: readonly (readonly string[])[] } = {
  permits: [['parcel', 'address'], ['number'], ['kind']],
  parcels: [['number']],
  findings: [['parcel', 'address'], ['firm'], ['inspectedOn']],
}

const COMPONENT = /^components\.([A-Za-z0-9][A-Za-z0-9 #-]{0,59})\.([A-Za-z]+(?:\.\d)?(?:\.[A-Za-z]+)?)$/

/** `components.tank 1.capacity`, `components.line.segments.0.from`: which component of the row, and which of its fields. Null for a target of another form. */
export function componentTarget(to: string): { readonly tag: string; readonly field: string } | null {
  const match = COMPONENT.exec(to)
  return match ? { tag: match[1]!, field: match[2]! } : null
}

/** The kind that a component's name says by itself: `tank 2` is a tank. */
export const kindOfTag = (tag: string): string | undefined =>
  COMPONENT_KINDS.find((kind) => tag === kind || new RegExp(`^${kind}[ #-]?\\d*$`).test(tag))

const PLACES = { permits: 'permit', findings: 'inspection' } as const

/** The field that a target fills; of a level, above or below. Undefined for what is no field of an entry. */
export function fieldOfTarget(kind: ImportKind, to: string): Field | undefined {
  if (kind === 'parcels') return undefined
  const component = componentTarget(to)
  const place = PLACES[kind]
  const field = component ? componentField(component.field) : fieldAt(place, to)
  if (!field || 'parts' in field || (field.by !== place && field.by !== 'both')) return undefined
  return component && NAMED_BY_TAG.has(component.field) ? undefined : field
}

/** The name that a component has in its target is its name on the paper or in the inspection. */
const NAMED_BY_TAG: ReadonlySet<string> = new Set(['tag', 'label'])

function componentField(path: string): Field | undefined {
  const [name = '', side] = path.split('.')
  const field = fieldAt('component', name)
  // A column fills one row: which of them its heading says.
  if (field?.value === 'rows' && pathOf(path).row === undefined) return undefined
  if (field?.value !== 'level') return fieldAt('component', path)
  return side === 'above' || side === 'below' ? field : undefined
}

/** Whether a file of that kind can fill it. */
export const isTarget = (kind: ImportKind, to: string): boolean =>
  TARGETS[kind].some((target) => target.to === to) || fieldOfTarget(kind, to) !== undefined

/** A heading as it is compared: letters and figures alone, lower case. */
export const plainHeading = (heading: string): string => heading.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')
