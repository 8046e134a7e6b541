import type { Result } from '../../base/result.ts'
import type { VesselShape } from '../../catalog/choices.ts'
import { tankCapacity } from '../../geometry/volume/tank-capacity.ts'
import type { TankShape } from '../../geometry/volume/tank-shape.ts'
import type { Issue } from '../../measure/issue.ts'
import type { Step, Worked } from '../../measure/step.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import type { AsBuiltComponent } from '../../records/as-built.ts'
import { statedValue } from '../../records/claim.ts'
import type { Measures } from '../../records/component.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { type Part, partOnRecord } from '../../records/part.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { claimFact, type Fact, firstKnown, known, lacking } from '../fact.ts'
import type { Gap } from '../gap.ts'
import type { Exhibit } from '../outcome.ts'
import { measured } from '../quantity.ts'
import { showLength, showVolume } from '../show.ts'
import type { Thing } from '../thing.ts'
import { asStated, type Better, insideReading, type Reading, reading, type Taking } from './found-length.ts'

/** Capacity to the outlet invert, US gallons, with its working and how each reading in it could be bettered. */
export type Capacity = {
  readonly gal: Uncertain
  readonly steps: readonly Step[]
  readonly better: readonly Better[]
}

type Dimension = 'length' | 'width' | 'diameter' | 'liquidDepth' | 'insideHeight'
const THINGS: { readonly [D in Dimension]: Thing } = {
  length: 'inside-length',
  width: 'inside-width',
  diameter: 'inside-diameter',
  liquidDepth: 'liquid-depth-to-invert',
  insideHeight: 'insideHeight',
}

/** Which dimensions a shape's capacity needs. */
const NEEDS: { readonly [S in VesselShape]: readonly Dimension[] } = {
  rectangular: ['length', 'width', 'liquidDepth'],
  'vertical-cylinder': ['diameter', 'liquidDepth'],
  'horizontal-cylinder': ['diameter', 'length', 'liquidDepth'],
  'horizontal-oval': ['width', 'insideHeight', 'length', 'liquidDepth'],
  'vertical-oval': ['length', 'width', 'liquidDepth'],
  sphere: ['diameter', 'liquidDepth'],
}

/** The shape as said, or the one that the dimensions given can only mean. */
function shapeOf(measures: Pick<Measures<unknown, unknown>, 'shape' | Dimension>): VesselShape | null {
  if (measures.shape) return measures.shape
  if (measures.length && measures.width && !measures.diameter) return 'rectangular'
  if (measures.diameter && measures.length) return 'horizontal-cylinder'
  return measures.diameter ? 'vertical-cylinder' : null
}

/** What a tank holds by the inspection's own readings; `part` is what it is taken to be. */
export function foundCapacity(found: FoundComponent, findings: string, part: Part): Fact<Capacity> {
  const shape = shapeOf(found)
  if (shape === null) return lacking({ gap: 'no-dimensions', part, where: 'inspection' })
  const missing = NEEDS[shape].filter((dimension) => found[dimension] === null)
  if (missing.length > 0)
    return lacking({ gap: 'not-measured', things: missing.map((name) => THINGS[name]), part })
  const taken = NEEDS[shape].map((dimension) => found[dimension]!)
  const taking: Taking = {
    part,
    of: found.label,
    findings,
    alone: ({ instrument }: FoundLength) =>
      taken.filter((other) => other.instrument === instrument).length === 1,
  }
  const wall = { thickness: found.wallThickness, material: found.material }
  const readings = NEEDS[shape].map((dimension): readonly [Dimension, Reading] => [
    dimension,
    dimension === 'liquidDepth'
      ? reading(found.liquidDepth!, THINGS.liquidDepth, taking)
      : insideReading(found[dimension]!, wall, THINGS[dimension], taking),
  ])
  const capacity = tankCapacity(
    shaped(shape, (dimension) => readings.find(([name]) => name === dimension)![1].length),
  )
  if (!capacity.ok) return lacking(impossible(part, capacity))
  return known(
    { ...answer(capacity.value), better: readings.flatMap(([, { better }]) => better) },
    ...readings.flatMap(([, { exhibits }]) => exhibits).filter(distinct),
    computed('capacity-by-readings', part, capacity.value),
  )
}

/** What a tank should hold: the capacity on record, else what the dimensions on record come to. */
export function recordedCapacity(
  built: AsBuiltComponent,
): Fact<{ readonly gal: number; readonly nominal: boolean }> {
  const stated = claimFact(built.measures.capacity, 'capacity', partOnRecord(built), showVolume)
  if (stated.state === 'known') return { ...stated, value: { gal: stated.value.gal, nominal: true } }
  return firstKnown<{ readonly gal: number; readonly nominal: boolean }>(stated, fromDimensions(built))
}

function fromDimensions(built: AsBuiltComponent): Fact<{ readonly gal: number; readonly nominal: boolean }> {
  const { measures, label } = built
  const part = partOnRecord(built)
  const stated = (dimension: Dimension) => statedValue(measures[dimension])
  const shape = shapeOf({
    shape: statedValue(measures.shape),
    length: stated('length'),
    width: stated('width'),
    diameter: stated('diameter'),
    liquidDepth: stated('liquidDepth'),
    insideHeight: stated('insideHeight'),
  })
  if (shape === null || NEEDS[shape].some((dimension) => stated(dimension) === null)) {
    return lacking({ gap: 'no-dimensions', part, where: 'record' })
  }
  const capacity = tankCapacity(
    shaped(shape, (dimension) => {
      const { ft, halfStepFt } = stated(dimension)!
      return asStated(ft, halfStepFt, `stated: ${dimension} of ${label}`)
    }),
  )
  if (!capacity.ok) return lacking(impossible(part, capacity))
  const exhibits = NEEDS[shape].flatMap((dimension) => {
    const fact = claimFact(measures[dimension], THINGS[dimension], part, showLength)
    return fact.state === 'known' ? fact.exhibits : []
  })
  return known(
    { gal: capacity.value.value.value, nominal: false },
    ...exhibits,
    computed('capacity-by-record', part, capacity.value),
  )
}

function shaped(shape: VesselShape, of: (dimension: Dimension) => Uncertain): TankShape {
  switch (shape) {
    case 'rectangular':
      return { kind: 'rectangular', length: of('length'), width: of('width'), liquidDepth: of('liquidDepth') }
    case 'vertical-cylinder':
      return { kind: 'vertical-cylinder', diameter: of('diameter'), liquidDepth: of('liquidDepth') }
    case 'horizontal-cylinder':
      return { kind: shape, diameter: of('diameter'), length: of('length'), liquidDepth: of('liquidDepth') }
    case 'horizontal-oval':
      return {
        kind: shape,
        width: of('width'),
        height: of('insideHeight'),
        length: of('length'),
        liquidDepth: of('liquidDepth'),
      }
    case 'vertical-oval':
      return { kind: shape, length: of('length'), width: of('width'), liquidDepth: of('liquidDepth') }
    case 'sphere':
      return { kind: shape, diameter: of('diameter'), liquidDepth: of('liquidDepth') }
  }
}

const answer = ({ value, steps }: Worked<Uncertain>) => ({ gal: value, steps })
const computed = (thing: Thing, part: Part, { value }: Worked<Uncertain>): Exhibit => ({
  thing,
  part,
  word: 'derived',
  asStated: null,
  used: measured(value, 'gal'),
  from: { kind: 'computed' },
})
const impossible = (
  part: Part,
  { error }: Extract<Result<unknown, readonly Issue[]>, { ok: false }>,
): Gap => ({ gap: 'impossible', part, issues: error })
const distinct = (exhibit: Exhibit, index: number, all: readonly Exhibit[]): boolean =>
  all.findIndex(({ thing, part }) => thing === exhibit.thing && part?.key === exhibit.part?.key) === index
