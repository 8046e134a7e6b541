import type { FindingsRecord } from '../records/findings.ts'

/** What lies on a drainfield and does not belong there. */
export const BURDENS_OF_FIELD = ['vehicles', 'building', 'roots', 'surface-water'] as const
export type FieldBurden = (typeof BURDENS_OF_FIELD)[number]

/** Whether it was seen; null where the inspection does not say. */
export const BURDEN_SEEN: { readonly [B in FieldBurden]: (record: FindingsRecord) => boolean | null } = {
  vehicles: ({ vehiclesOver }) => vehiclesOver ?? null,
  building: ({ builtOver }) => builtOver ?? null,
  roots: ({ rootsIn }) => rootsIn ?? null,
  'surface-water': ({ drainsOnto }) => drainsOnto ?? null,
}

/** What runs into a system beyond what people send it. */
export const LOADS = ['disposer', 'clear-water', 'water-use'] as const
export type Load = (typeof LOADS)[number]
