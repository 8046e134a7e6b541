import { COMPONENT_KINDS, MEASURE_NAMES } from '../../records/component.ts'
import type { ImportKind } from '../../store/imports.ts'

/** A column that a file of one kind can have: what it fills, and how people head it (compared without case and signs). */
export type Target = {
  readonly to: string
  readonly says: string
  readonly headings: readonly string[]
  /** Cells of it are figures where the entry wants a number. */
  readonly number?: true
}

const PARCEL: Target = {
  to: 'parcel',
  says: 'the parcel number, in any spelling; an old number does',
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

const PERMIT: readonly Target[] = [
  PARCEL,
  ADDRESS,
  {
    to: 'number',
    says: 'the permit number',
    headings: ['permit', 'permit number', 'permit no', 'PermitNum', 'permit id', 'number'],
  },
  {
    to: 'kind',
    says: 'new, repair, alteration or abandonment',
    headings: [
      'kind',
      'type',
      'permit type',
      'PermitTypeMapped',
      'work',
      'work type',
      'WorkClass',
      'WorkClassMapped',
    ],
  },
  {
    to: 'issuedOn',
    says: 'the day it was issued',
    headings: ['issued', 'issued on', 'issue date', 'date issued', 'IssuedDate', 'permit date'],
  },
  {
    to: 'approvedOn',
    says: 'the day of final approval',
    headings: [
      'approved',
      'approved on',
      'final',
      'finaled',
      'final date',
      'final approval',
      'date approved',
      'approval date',
      'date inspected',
      'CompletedDate',
    ],
  },
  {
    to: 'bedrooms',
    says: 'how many bedrooms it was designed for',
    headings: ['bedrooms', 'beds', 'br', 'bdrms', 'no bedrooms', 'number of bedrooms'],
    number: true,
  },
  {
    to: 'designFlowGpd',
    says: 'the design flow, gallons a day',
    headings: ['flow', 'design flow', 'gpd', 'design flow gpd', 'gallons per day'],
    number: true,
  },
  {
    to: 'percRateMpi',
    says: 'the perc rate, minutes an inch',
    headings: ['perc', 'perc rate', 'mpi', 'min per inch', 'percolation rate'],
    number: true,
  },
  {
    to: 'soilTexture',
    says: 'the soil as the paper names it',
    headings: ['soil', 'soil texture', 'soil type'],
  },
  {
    to: 'remarks',
    says: 'anything else on the paper',
    headings: ['remarks', 'notes', 'comments', 'Description'],
  },
]

const PARCELS: readonly Target[] = [
  { ...PARCEL, to: 'number', headings: [...PARCEL.headings, 'number'] },
  ADDRESS,
  {
    to: 'oldNumbers',
    says: 'numbers it bore before, with ; between them',
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
    says: 'the numbers of the parcels it was made of, with ; between them',
    headings: ['merged from', 'combined from'],
  },
  {
    to: 'changedOn',
    says: 'the day it was renumbered, split or merged',
    headings: ['changed', 'changed on', 'change date', 'effective', 'effective date'],
  },
  {
    to: 'retiredOn',
    says: 'the day from which it is no parcel any more',
    headings: ['retired', 'retired on', 'inactive date'],
  },
]

const FINDINGS: readonly Target[] = [
  PARCEL,
  ADDRESS,
  {
    to: 'firm',
    says: 'the inspection firm, by the name it has here',
    headings: ['firm', 'inspector', 'inspection firm', 'company', 'inspected by'],
  },
  {
    to: 'inspectedOn',
    says: 'the day of the inspection',
    headings: [
      'inspected',
      'inspected on',
      'inspection',
      'inspection date',
      'inspection date',
      'date inspected',
      'inspected',
      'date',
    ],
  },
  { to: 'occupancy', says: 'occupied, vacant, seasonal or unknown', headings: ['occupancy', 'occupied'] },
  {
    to: 'people',
    says: 'how many people live there',
    headings: ['people', 'occupants', 'residents'],
    number: true,
  },
  {
    to: 'bedroomsCounted',
    says: 'bedrooms counted',
    headings: ['bedrooms', 'bedrooms counted', 'beds', 'br'],
    number: true,
  },
  {
    to: 'lastPumpedOn',
    says: 'the day it was last pumped',
    headings: ['pumped', 'last pumped', 'last pumped on', 'pump date'],
  },
  { to: 'notes', says: 'anything else', headings: ['notes', 'remarks', 'comments'] },
]

export const TARGETS: { readonly [K in ImportKind]: readonly Target[] } = {
  permits: PERMIT,
  parcels: PARCELS,
  findings: FINDINGS,
}

/** What lies beside the entry of a permit or an inspection: whose it is. */
export const BESIDE: ReadonlySet<string> = new Set(['parcel', 'address', 'firm'])

/** What a row is no record without. A parcel is found by its number or its address. */
export const NEEDED: { readonly [K in ImportKind]: readonly (readonly string[])[] } = {
  permits: [['parcel', 'address'], ['number'], ['kind']],
  parcels: [['number']],
  findings: [['parcel', 'address'], ['firm'], ['inspectedOn']],
}

const SHARED_FIELDS = [
  ...MEASURE_NAMES.filter((name) => name !== 'tie'),
  'kind',
  'note',
  'tie.a',
  'tie.b',
  'tie.side',
  'tie.sideWords',
]
export const COMPONENT_FIELDS: { readonly [K in 'permits' | 'findings']: readonly string[] } = {
  permits: [...SHARED_FIELDS, 'action', 'replaces'],
  findings: [
    ...SHARED_FIELDS,
    ...['key', 'outcome', 'searchedBy', 'notReachedBecause', 'condition', 'conditionWords', 'scumThickness'],
    ...['scumBottomBelow', 'sludgeDepth', 'outletDeviceBelow', 'lidSecured', 'riserToGrade'],
    ...['levelAboveOutlet.above', 'levelAboveOutlet.below'],
  ],
}
export const REFERENCE_FIELDS = ['a', 'b', 'baseline', 'wall', 'bearingDeg'] as const

const COMPONENT = /^components\.([A-Za-z0-9][A-Za-z0-9 #-]{0,59})\.([A-Za-z]+(?:\.[A-Za-z]+)?)$/

/** `components.tank 1.capacity`: which component of the row, and which of its fields. Null for a target of another form. */
export function componentTarget(to: string): { readonly tag: string; readonly field: string } | null {
  const match = COMPONENT.exec(to)
  return match ? { tag: match[1]!, field: match[2]! } : null
}

/** The kind that a component's name says by itself: `tank 2` is a tank. */
export const kindOfTag = (tag: string): string | undefined =>
  COMPONENT_KINDS.find((kind) => tag === kind || new RegExp(`^${kind}[ #-]?\\d*$`).test(tag))

/** Whether a file of that kind can fill it. */
export function isTarget(kind: ImportKind, to: string): boolean {
  if (TARGETS[kind].some((target) => target.to === to)) return true
  if (kind === 'parcels') return false
  const reference = /^reference\.(\w+)$/.exec(to)?.[1]
  if (reference !== undefined) return (REFERENCE_FIELDS as readonly string[]).includes(reference)
  const component = componentTarget(to)
  return component !== null && COMPONENT_FIELDS[kind].includes(component.field)
}

/** A heading as it is compared: letters and figures alone, lower case. */
export const plainHeading = (heading: string): string => heading.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')
