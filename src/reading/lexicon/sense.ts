import type { ComponentKind, Material, VesselShape } from '../../records/component.ts'
import type { PermitAction, PermitKind } from '../../records/permit.ts'

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

/** What a spelling means where it stands on paper. */
export type Sense =
  | { readonly is: 'asks'; readonly ask: Ask; readonly weak?: true; readonly after?: true }
  /** A label whose value is not wanted, so that it is not taken for something else's. */
  | { readonly is: 'decoy' }
  | { readonly is: 'mention'; readonly kind: SubjectKind; readonly weak?: true }
  | { readonly is: 'material'; readonly material: Material }
  | { readonly is: 'shape'; readonly shape: VesselShape }
  | { readonly is: 'work'; readonly kind: PermitKind }
  | { readonly is: 'action'; readonly action: PermitAction }
  /** Words that stand inside a label and add nothing: `of`, `each`, `inside`. */
  | { readonly is: 'joint' }
  /** `required`, `minimum`: the value beside it is what a rule wants, not what was put in. */
  | { readonly is: 'rule' }
  | { readonly is: 'unit'; readonly unit: 'ft' | 'in' | 'gal' | 'gpd' | 'mpi' | 'sqft' }

export type Spelling = { readonly text: string; readonly sense: Sense }

/** Letters and figures only, small: `Assessor's Parcel No.` is `assessorsparcelno`. */
export const squeezed = (text: string): string => text.toLowerCase().replace(/[^a-z0-9#&]/g, '')
