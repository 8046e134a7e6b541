import type { AbsorptionShape } from '../../geometry/absorption/absorption-shape.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { Readings } from './readings.ts'

type Taken = FoundLength
type MaybeTaken = FoundLength | undefined

/** What takes up the effluent, as it was measured. */
export type MeasuredAbsorption =
  | {
      readonly kind: 'pits'
      readonly diameter: Taken
      readonly effectiveDepth: Taken
      readonly count: number
    }
  | {
      readonly kind: 'trenches'
      readonly width: Taken
      readonly lengths: readonly Taken[]
      readonly effectiveDepth?: MaybeTaken
    }
  | {
      readonly kind: 'bed'
      readonly length: Taken
      readonly width: Taken
      readonly effectiveDepth?: MaybeTaken
    }
  | {
      readonly kind: 'chambers'
      readonly width: Taken
      readonly lengths: readonly Taken[]
      readonly credit: number
    }
  | { readonly kind: 'mound'; readonly basalLength: Taken; readonly basalWidth: Taken }

/** Every length that was taken, so that it can be told which instrument was used more than once. */
export function absorbingLengths(shape: MeasuredAbsorption): readonly FoundLength[] {
  return Object.values(shape)
    .flat()
    .filter((value): value is FoundLength => typeof value === 'object' && 'instrument' in value)
}

/** The shape of the computation, out of the readings. */
export function absorptionShapeOf(shape: MeasuredAbsorption, { plain }: Readings): AbsorptionShape {
  const of = shape.kind
  const depth = (taken: MaybeTaken) => (taken ? { effectiveDepth: plain(taken, 'effective depth', of) } : {})
  const rows = (lengths: readonly Taken[]) =>
    lengths.map((length, index) => plain(length, `length ${index + 1}`, of))
  switch (shape.kind) {
    case 'pits':
      return {
        kind: 'pits',
        diameter: plain(shape.diameter, 'diameter', of),
        effectiveDepth: plain(shape.effectiveDepth, 'effective depth', of),
        count: shape.count,
      }
    case 'trenches':
      return {
        kind: 'trenches',
        width: plain(shape.width, 'width', of),
        lengths: rows(shape.lengths),
        ...depth(shape.effectiveDepth),
      }
    case 'bed':
      return {
        kind: 'bed',
        length: plain(shape.length, 'length', of),
        width: plain(shape.width, 'width', of),
        ...depth(shape.effectiveDepth),
      }
    case 'chambers':
      return {
        kind: 'chambers',
        width: plain(shape.width, 'width', of),
        lengths: rows(shape.lengths),
        credit: shape.credit,
      }
    case 'mound':
      return {
        kind: 'mound',
        basalLength: plain(shape.basalLength, 'basal length', of),
        basalWidth: plain(shape.basalWidth, 'basal width', of),
      }
  }
}
