import { unreachable } from '../../base/invariant.ts'
import type { Ends, TankShape } from '../../geometry/volume/tank-shape.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { Readings, Wall } from './readings.ts'

type Taken = FoundLength
type MaybeTaken = FoundLength | undefined

/** One vessel as it was measured; the same names as the shapes of the computation. */
export type MeasuredVessel =
  | {
      readonly kind: 'rectangular'
      readonly length: Taken
      readonly width: Taken
      readonly liquidDepth: Taken
      readonly floorLength?: MaybeTaken
      readonly floorWidth?: MaybeTaken
      readonly cornerRadius?: MaybeTaken
      readonly insideHeight?: MaybeTaken
    }
  | {
      readonly kind: 'vertical-cylinder'
      readonly diameter: Taken
      readonly liquidDepth: Taken
      readonly floorDiameter?: MaybeTaken
      readonly insideHeight?: MaybeTaken
    }
  | {
      readonly kind: 'horizontal-cylinder'
      readonly diameter: Taken
      readonly length: Taken
      readonly liquidDepth: Taken
      readonly ends?: MeasuredEnds | undefined
    }
  | {
      readonly kind: 'horizontal-oval' | 'horizontal-ellipse'
      readonly width: Taken
      readonly height: Taken
      readonly length: Taken
      readonly liquidDepth: Taken
    }
  | {
      readonly kind: 'vertical-oval'
      readonly length: Taken
      readonly width: Taken
      readonly liquidDepth: Taken
      readonly insideHeight?: MaybeTaken
    }
  | { readonly kind: 'sphere'; readonly diameter: Taken; readonly liquidDepth: Taken }

export type MeasuredEnds =
  | { readonly kind: 'flat' }
  | { readonly kind: 'spherical-segment'; readonly rise: Taken }
  | { readonly kind: 'elliptical'; readonly rise?: MaybeTaken }

export type MeasuredShape =
  | MeasuredVessel
  | { readonly kind: 'two-compartments'; readonly first: MeasuredVessel; readonly second: MeasuredVessel }
  | { readonly kind: 'in-series'; readonly tanks: readonly MeasuredVessel[] }

const vesselsOf = (shape: MeasuredShape): readonly MeasuredVessel[] =>
  shape.kind === 'in-series'
    ? shape.tanks
    : shape.kind === 'two-compartments'
      ? [shape.first, shape.second]
      : [shape]

const isTaken = (value: unknown): value is FoundLength =>
  typeof value === 'object' && value !== null && 'instrument' in value

/** Every length that was taken, so that it can be told which instrument was used more than once. */
export const lengthsOf = (shape: MeasuredShape): readonly FoundLength[] =>
  vesselsOf(shape).flatMap((vessel) =>
    Object.values(vessel).flatMap((value: unknown) =>
      isTaken(value)
        ? [value]
        : typeof value === 'object' && value !== null
          ? Object.values(value).filter(isTaken)
          : [],
    ),
  )

/** The shape of the computation, out of the readings. */
export function tankShapeOf(shape: MeasuredShape, readings: Readings, wall: Wall): TankShape {
  switch (shape.kind) {
    case 'two-compartments':
      return {
        kind: 'two-compartments',
        first: vesselOf(shape.first, readings, wall, 'compartment 1'),
        second: vesselOf(shape.second, readings, wall, 'compartment 2'),
      }
    case 'in-series':
      return {
        kind: 'in-series',
        tanks: shape.tanks.map((tank, index) => vesselOf(tank, readings, wall, `tank ${index + 1}`)),
      }
    default:
      return vesselOf(shape, readings, wall, 'tank')
  }
}

function vesselOf(vessel: MeasuredVessel, { inside, plain }: Readings, wall: Wall, of: string): TankShape {
  const within = (taken: Taken, name: string): Uncertain => inside(taken, `inside ${name}`, of, wall)
  const as = <K extends string>(key: K, taken: MaybeTaken, name: string) =>
    taken === undefined ? {} : ({ [key]: plain(taken, name, of) } as { [P in K]: Uncertain })
  const liquidDepth = plain(vessel.liquidDepth, 'liquid depth to the outlet invert', of)
  switch (vessel.kind) {
    case 'rectangular':
      return {
        kind: 'rectangular',
        length: within(vessel.length, 'length'),
        width: within(vessel.width, 'width'),
        liquidDepth,
        ...as('floorLength', vessel.floorLength, 'length at the floor'),
        ...as('floorWidth', vessel.floorWidth, 'width at the floor'),
        ...as('cornerRadius', vessel.cornerRadius, 'corner radius'),
        ...as('insideHeight', vessel.insideHeight, 'inside height'),
      }
    case 'vertical-cylinder':
      return {
        kind: 'vertical-cylinder',
        diameter: within(vessel.diameter, 'diameter'),
        liquidDepth,
        ...as('floorDiameter', vessel.floorDiameter, 'diameter at the floor'),
        ...as('insideHeight', vessel.insideHeight, 'inside height'),
      }
    case 'horizontal-cylinder':
      return {
        kind: 'horizontal-cylinder',
        diameter: within(vessel.diameter, 'diameter'),
        length: within(vessel.length, 'length'),
        liquidDepth,
        ...(vessel.ends ? { ends: endsOf(vessel.ends, (rise) => plain(rise, 'rise of the heads', of)) } : {}),
      }
    case 'horizontal-oval':
    case 'horizontal-ellipse':
      return {
        kind: vessel.kind,
        width: within(vessel.width, 'width'),
        height: within(vessel.height, 'height'),
        length: within(vessel.length, 'length'),
        liquidDepth,
      }
    case 'vertical-oval':
      return {
        kind: 'vertical-oval',
        length: within(vessel.length, 'length'),
        width: within(vessel.width, 'width'),
        liquidDepth,
        ...as('insideHeight', vessel.insideHeight, 'inside height'),
      }
    case 'sphere':
      return { kind: 'sphere', diameter: within(vessel.diameter, 'diameter'), liquidDepth }
    default:
      return unreachable(vessel, 'measured vessel')
  }
}

function endsOf(ends: MeasuredEnds, read: (rise: Taken) => Uncertain): Ends {
  if (ends.kind === 'flat') return ends
  if (ends.kind === 'spherical-segment') return { kind: ends.kind, rise: read(ends.rise) }
  return { kind: ends.kind, ...(ends.rise ? { rise: read(ends.rise) } : {}) }
}
