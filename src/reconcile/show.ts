import type { MeasureName, SystemField } from '../catalog/catalog.ts'
import type { LineStart } from '../catalog/choices.ts'
import { MEASURES } from '../catalog/component-measures.ts'
import type { Field } from '../catalog/field.ts'
import { PERMIT_FIELDS } from '../catalog/permit-fields.ts'
import type { StatedLength } from '../measure/parse/length.ts'
import type { StatedVolume } from '../measure/parse/volume.ts'
import type { Measures, Tie } from '../records/component.ts'
import type { FoundLength } from '../records/quantity.ts'
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

type Segments = NonNullable<Measures<StatedLength>['segments']>

export const showStretches = (segments: Segments, from: LineStart | null): Shown => ({
  from,
  stretches: segments.map((it) => ({
    from: it.from.ft,
    to: it.to.ft,
    material: it.material,
    sizeFt: it.pipeDiameter?.ft ?? null,
  })),
})

/** A measure of a component as an answer shows it, by what kind of value the catalog says it is. */
export function showMeasure(name: MeasureName, value: unknown): Shown {
  switch (MEASURES[name].value) {
    case 'volume':
      return showVolume(value as StatedVolume)
    case 'group':
      return showTie(value as Tie<StatedLength>)
    case 'number':
      return exactly(value as number, 'sq ft')
    case 'whole':
      return showCount(value as number)
    case 'choice':
      return showChoice(value as string)
    case 'length':
      return showLength(value as StatedLength)
    case 'rows':
      return showStretches(value as Segments, null)
  }
}

/** The units of system fields are in the catalog too. */
export function showSystemField(name: SystemField, value: number | string): Shown {
  const field: Field = PERMIT_FIELDS[name]
  if (field.value === 'whole') return showCount(Number(value))
  if (field.value === 'number' && (field.unit === 'gpd' || field.unit === 'min/in'))
    return exactly(Number(value), field.unit)
  return showChoice(String(value))
}
