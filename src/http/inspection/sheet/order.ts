import type { ComponentKind } from '../../../catalog/kinds.ts'

/** From the house outward, as one meets them: the sewer, the tank and its parts, then what the tank feeds; the well last. */
export const WALK: readonly ComponentKind[] = [
  'building-sewer',
  'straight-pipe',
  'grease-interceptor',
  'tank',
  'treatment-unit',
  'holding-tank',
  'cesspool',
  'privy',
  'laundry-system',
  'inlet-baffle',
  'outlet-baffle',
  'effluent-filter',
  'access-opening',
  'riser',
  'pump-chamber',
  'media-filter',
  'disinfection-unit',
  'distribution-box',
  'effluent-line',
  'seepage-pit',
  'trench',
  'bed',
  'chambers',
  'mound',
  'drip-field',
  'observation-port',
  'well',
]

/** In the order of the walk; of one kind in the order on record. */
export const inWalkingOrder = <T extends { readonly kind: ComponentKind }>(
  parts: readonly T[],
): readonly T[] => [...parts].sort((a, b) => WALK.indexOf(a.kind) - WALK.indexOf(b.kind))
