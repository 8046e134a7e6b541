import type { ComponentKind } from '../catalog/kinds.ts'

/** Fields of the permit itself that a label can ask for. */
export const PERMIT_ASKS = [
  'number',
  'kind',
  'issuedOn',
  'approvedOn',
  'bedrooms',
  'designFlowGpd',
  'percRateMpi',
  'soilTexture',
  'parcelNumber',
  'address',
  'cornerA',
  'cornerB',
  'baseline',
  'remarks',
] as const
export type PermitAsk = (typeof PERMIT_ASKS)[number]

/** Measures of a component that a label can ask for. `depth` and `totalLength` take their meaning from the component. */
export const MEASURE_ASKS = [
  'capacity',
  'length',
  'totalLength',
  'width',
  'diameter',
  'liquidDepth',
  'insideHeight',
  'wallThickness',
  'effectiveDepth',
  'depthToTop',
  'depth',
  'pipeDiameter',
  'dimensions',
  'compartments',
  'count',
  'material',
  'shape',
  'tieA',
  'tieB',
  'ties',
  'area',
  'rate',
] as const
export type MeasureAsk = (typeof MEASURE_ASKS)[number]

export type Ask = PermitAsk | MeasureAsk

/** `absorption`: a drainfield of a kind that the words do not name. */
export type SubjectKind = ComponentKind | 'absorption'

/** Units that a label may name for the figures beside it. */
export type LabelUnit = 'ft' | 'in' | 'gal' | 'gpd' | 'mpi' | 'sqft'
