import { MEASURE_WORDS } from '../../../brief/recorded.ts'
import { COMPONENT_KINDS, MATERIALS, SIDES, VESSEL_SHAPES, WALLS } from '../../../records/component.ts'
import { PERMIT_ACTIONS, PERMIT_KINDS } from '../../../records/permit.ts'

/** What a person fills in: its name is the pointer into the permit entry. */
export type Asked = {
  readonly name: string
  readonly label: string
  readonly input: 'line' | 'prose' | 'number' | 'choice' | 'list'
  readonly choices?: readonly string[]
  /** Shown whether or not anything was read. */
  readonly always?: true
}

const choice = (name: string, label: string, choices: readonly string[]): Asked => ({
  name,
  label,
  input: 'choice',
  choices,
})
const line = (name: string, label: string): Asked => ({ name, label, input: 'line' })
const number = (name: string, label: string): Asked => ({ name, label, input: 'number' })
const always = (asked: Asked): Asked => ({ ...asked, always: true })

/** What the permit as a whole says. `/parcel` is where it belongs and is no part of the entry. */
export const PERMIT_FIELDS: readonly Asked[] = [
  always(line('/parcel', 'Parcel')),
  always(line('/number', 'Permit number')),
  always(choice('/kind', 'Kind of permit', PERMIT_KINDS)),
  always(line('/issuedOn', 'Issued on')),
  always(line('/approvedOn', 'Final approval on')),
  always(number('/bedrooms', 'Bedrooms')),
  number('/designFlowGpd', 'Design flow, gpd'),
  number('/percRateMpi', 'Perc rate, min/in'),
  line('/soilTexture', 'Soil'),
  line('/reference/a', 'Corner A'),
  line('/reference/b', 'Corner B'),
  line('/reference/baseline', 'From A to B'),
  choice('/reference/wall', 'Reference wall', WALLS),
  number('/reference/bearingDeg', 'Bearing A to B, degrees'),
  { name: '/remarks', label: 'Remarks', input: 'prose' },
]

const PART_FIELDS: readonly Asked[] = [
  always(line('tag', 'Name on the paper')),
  always(choice('kind', 'What it is', COMPONENT_KINDS)),
  choice('action', 'What was done', PERMIT_ACTIONS),
  { name: 'replaces', label: 'In place of', input: 'list' },
  line('capacity', MEASURE_WORDS.capacity),
  choice('shape', MEASURE_WORDS.shape, VESSEL_SHAPES),
  line('length', MEASURE_WORDS.length),
  line('width', MEASURE_WORDS.width),
  line('diameter', MEASURE_WORDS.diameter),
  line('liquidDepth', MEASURE_WORDS.liquidDepth),
  line('insideHeight', MEASURE_WORDS.insideHeight),
  line('wallThickness', MEASURE_WORDS.wallThickness),
  line('effectiveDepth', MEASURE_WORDS.effectiveDepth),
  line('depthToTop', MEASURE_WORDS.depthToTop),
  line('pipeDiameter', MEASURE_WORDS.pipeDiameter),
  number('compartments', MEASURE_WORDS.compartments),
  number('count', MEASURE_WORDS.count),
  choice('material', MEASURE_WORDS.material, MATERIALS),
  line('tie/a', 'tie from A'),
  line('tie/b', 'tie from B'),
  choice('tie/side', 'side', SIDES),
  line('tie/sideWords', 'side, as the paper has it'),
  { name: 'note', label: 'note', input: 'prose' },
]

const headed = (label: string): string => label.charAt(0).toUpperCase() + label.slice(1)

/** What one part in the ground says, the part being the `index`th of the form. */
export const partFields = (index: number): readonly Asked[] =>
  PART_FIELDS.map((asked) => ({
    ...asked,
    name: `/components/${index}/${asked.name}`,
    label: headed(asked.label),
  }))

export const leftOut = (index: number): string => `leave/components/${index}`
export const seenName = (name: string): string => `seen${name}`
