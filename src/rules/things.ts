import type { ComponentKind } from '../catalog/kinds.ts'

/** What a setback is measured from: a part of the system, or `absorption` for whatever kind of it. */
export const SETBACK_FROM = [
  'tank',
  'pump-chamber',
  'distribution-box',
  'building-sewer',
  'effluent-line',
  'cesspool',
  'well',
  'absorption',
  'seepage-pit',
  'trench',
  'bed',
  'chambers',
  'mound',
  'drip-field',
] as const satisfies readonly (ComponentKind | 'absorption')[]
export type SetbackFrom = (typeof SETBACK_FROM)[number]

/** What a setback is measured to. A specific thing falls under its general one: see `GENERAL`. */
export const SETBACK_TO = [
  'private-well',
  'irrigation-well',
  'decommissioned-well',
  'public-well',
  'suction-line',
  'pressure-water-line',
  'public-spring',
  'drinking-spring-or-surface',
  'cistern',
  'surface-water',
  'marine-water',
  'fresh-water',
  'stream-or-ditch',
  'wetland',
  'wetland-bordering-supply',
  'vernal-pool',
  'supply-reservoir',
  'supply-tributary',
  'supply-drain',
  'property-line',
  'street',
  'building',
  'foundation',
  'slab',
  'basement-wall',
  'outbuilding',
  'swimming-pool',
  'drain',
  'groundwater-drain',
  'drain-down-gradient',
  'drain-up-gradient',
  'catch-basin-or-dry-well',
  'cut',
  'cut-shallow-soil',
  'cut-deep-soil',
  'downhill-slope',
  'other-absorption',
  'other-pit',
] as const
export type SetbackTo = (typeof SETBACK_TO)[number]

/** Where a table has no row for the thing itself, the row of the general thing holds. */
export const GENERAL_FROM: Partial<Record<SetbackFrom, SetbackFrom>> = {
  'pump-chamber': 'tank',
  'seepage-pit': 'absorption',
  trench: 'absorption',
  bed: 'absorption',
  chambers: 'absorption',
  mound: 'absorption',
  'drip-field': 'absorption',
}

export const GENERAL_TO: Partial<Record<SetbackTo, SetbackTo>> = {
  'marine-water': 'surface-water',
  'fresh-water': 'surface-water',
  slab: 'foundation',
  'basement-wall': 'foundation',
  foundation: 'building',
  'groundwater-drain': 'drain',
  'drain-down-gradient': 'drain',
  'drain-up-gradient': 'drain',
  'cut-shallow-soil': 'cut',
  'cut-deep-soil': 'cut',
  'other-pit': 'other-absorption',
}
