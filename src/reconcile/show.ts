import type { SystemField } from '../records/as-built.ts'
import type { MeasureName, Tie } from '../records/component.ts'
import type { FoundLength, StatedLength, StatedVolume } from '../records/quantity.ts'
import { exactly } from './quantity.ts'
import type { Shown } from './thing.ts'

export const showLength = ({ ft }: StatedLength | FoundLength): Shown => exactly(ft, 'ft')
export const showVolume = ({ gal }: StatedVolume): Shown => exactly(gal, 'gal')
export const showChoice = (choice: string): Shown => ({ choice })
export const showCount = (count: number): Shown => ({ count })
export const showTie = ({ a, b, side }: Tie<StatedLength> | Tie<FoundLength>): Shown => ({
  ties: [a.ft, b.ft],
  side,
})

/** A measure of a component as an answer shows it, by what kind of value it is. */
export function showMeasure(name: MeasureName, value: unknown): Shown {
  switch (name) {
    case 'capacity':
      return showVolume(value as StatedVolume)
    case 'tie':
      return showTie(value as Tie<StatedLength>)
    case 'compartments':
    case 'count':
      return showCount(value as number)
    case 'shape':
    case 'material':
      return showChoice(value as string)
    default:
      return showLength(value as StatedLength)
  }
}

export function showSystemField(name: SystemField, value: number | string): Shown {
  switch (name) {
    case 'bedrooms':
      return showCount(Number(value))
    case 'designFlowGpd':
      return exactly(Number(value), 'gpd')
    case 'percRateMpi':
      return exactly(Number(value), 'min/in')
    case 'soilTexture':
      return showChoice(String(value))
  }
}
