import type { ComponentKind } from '../../catalog/kinds.ts'

/**
 * What a word can be part of, in the order in which the model numbers it. `none` is a label or nothing that is wanted;
 * `part` names a component; the last five are told so that they are taken for nothing else, and are never proposed.
 */
export const FIELDS = [
  'none',
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
  'capacity',
  'compartments',
  'count',
  'material',
  'shape',
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
  'tieA',
  'tieB',
  'area',
  'rate',
  'part',
  'owner',
  'installer',
  'installedOn',
  'otherDate',
  'otherNumber',
] as const
export type Field = (typeof FIELDS)[number]

/**
 * Of what a value is told: the permit itself, a component, a drainfield not named more closely, or what is no part. The
 * model answers by these places: a kind that the catalog has gained since is no answer of it before it is trained again.
 */
export const TOLD_OF = [
  'permit',
  'tank',
  'pump-chamber',
  'cesspool',
  'distribution-box',
  'building-sewer',
  'effluent-line',
  'seepage-pit',
  'trench',
  'bed',
  'chambers',
  'mound',
  'drip-field',
  'inlet-baffle',
  'outlet-baffle',
  'effluent-filter',
  'access-opening',
  'riser',
  'observation-port',
  'well',
  'absorption',
  'other',
] as const satisfies readonly (ComponentKind | 'permit' | 'absorption' | 'other')[]
export type ToldOf = (typeof TOLD_OF)[number]

/** The unit of a number: written beside it, or given by the label, a heading or custom. */
export const UNITS_OF = ['own', 'ft', 'in', 'gal'] as const
export type UnitOf = (typeof UNITS_OF)[number]
