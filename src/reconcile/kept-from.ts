import type { DistanceName } from '../catalog/distances.ts'
import type { SetbackTo } from '../rules/things.ts'

type Thing = { readonly field: DistanceName; readonly to: SetbackTo }

/** What parts keep away from: the field that says how far, and the row of a table that says how far it has to be. */
export const KEPT_FROM = {
  well: { field: 'toWell', to: 'private-well' },
  'public-well': { field: 'toPublicWell', to: 'public-well' },
  spring: { field: 'toSpring', to: 'drinking-spring-or-surface' },
  building: { field: 'toBuilding', to: 'building' },
  'property-line': { field: 'toPropertyLine', to: 'property-line' },
  'surface-water': { field: 'toSurfaceWater', to: 'surface-water' },
  stream: { field: 'toStream', to: 'stream-or-ditch' },
  wetland: { field: 'toWetland', to: 'wetland' },
  'water-line': { field: 'toWaterLine', to: 'pressure-water-line' },
  'suction-line': { field: 'toSuctionLine', to: 'suction-line' },
  pool: { field: 'toPool', to: 'swimming-pool' },
  drain: { field: 'toDrain', to: 'drain' },
  cut: { field: 'toCut', to: 'cut' },
  'other-system': { field: 'toOtherSystem', to: 'other-absorption' },
} as const satisfies { readonly [thing: string]: Thing }
export type KeptFrom = keyof typeof KEPT_FROM
export const KEPT_FROM_NAMES = Object.keys(KEPT_FROM) as readonly KeptFrom[]

/** Every lot has one: it is asked of every part, whether or not somebody said how far it is. A pond or a pool need not be. */
export const ALWAYS_THERE: readonly KeptFrom[] = ['property-line']

/** How a distance came to be known: taped across by the inspection, stated by a permit, or from where the two lie. */
export type DistanceBy = 'taped' | 'stated' | 'placed'
