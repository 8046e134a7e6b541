import type { Ask, LabelUnit, SubjectKind } from '../asks.ts'
import type { BareUnit } from './length.ts'

const feet = { unit: 'ft', sure: false } as const
const inches = { unit: 'in', sure: false } as const

/**
 * What a length without a unit is, where the label gives none: pipes and walls are told in inches, tanks and lines in
 * feet, and a number too large for the one is the other (common practice).
 */
export function bareUnitFor(ask: Ask, kind: SubjectKind | null, labelUnit: LabelUnit | null): BareUnit {
  if (labelUnit === 'ft' || labelUnit === 'in') return () => ({ unit: labelUnit, sure: true })
  const isPipe = kind === 'building-sewer' || kind === 'effluent-line'
  switch (ask) {
    case 'pipeDiameter':
    case 'wallThickness':
      return (value) => (value <= 24 ? inches : null)
    case 'diameter':
      return (value) => (isPipe ? inches : value <= 20 ? feet : inches)
    case 'width':
      return (value) =>
        kind === 'trench' || kind === 'absorption'
          ? value < 10
            ? feet
            : inches
          : value <= 60
            ? feet
            : inches
    case 'liquidDepth':
    case 'insideHeight':
      return (value) => (value <= 12 ? feet : inches)
    case 'effectiveDepth':
      return (value) => (kind === 'seepage-pit' ? (value <= 30 ? feet : inches) : value < 5 ? feet : inches)
    case 'depthToTop':
    case 'depth':
      return (value) => (value <= 8 || kind === 'seepage-pit' ? feet : inches)
    case 'length':
    case 'totalLength':
    case 'baseline':
    case 'tieA':
    case 'tieB':
      return () => feet
    default:
      return () => null
  }
}
