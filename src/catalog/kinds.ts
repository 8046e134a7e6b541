/** What can be in the ground or belong to it. A dry well that takes effluent is a seepage pit (common practice). */
export const COMPONENT_KINDS = [
  'tank',
  'pump-chamber',
  'treatment-unit',
  'holding-tank',
  'grease-interceptor',
  'media-filter',
  'disinfection-unit',
  'laundry-system',
  'cesspool',
  'privy',
  'straight-pipe',
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
] as const
export type ComponentKind = (typeof COMPONENT_KINDS)[number]

/** The kinds that disperse effluent into the soil. */
export const ABSORPTION_KINDS = ['seepage-pit', 'trench', 'bed', 'chambers', 'mound', 'drip-field'] as const
export type AbsorptionKind = (typeof ABSORPTION_KINDS)[number]

/** Kinds by how they are built, as fields name them. */
export const VESSELS = [
  'tank',
  'pump-chamber',
  'treatment-unit',
  'holding-tank',
  'grease-interceptor',
] as const
/** Vessels whose liquid stands at an outlet when all is well. A holding tank has none, a pump sets its own level. */
export const WITH_OUTLET = ['tank', 'treatment-unit', 'grease-interceptor'] as const
/** Kinds that are opened to be seen into. */
export const OPENED = [
  ...VESSELS,
  'media-filter',
  'disinfection-unit',
  'laundry-system',
  'cesspool',
  'privy',
  'seepage-pit',
  'distribution-box',
] as const
/** Kinds with a motor, floats or an alarm. */
export const POWERED = ['pump-chamber', 'treatment-unit', 'holding-tank'] as const
export const PITS = ['seepage-pit', 'cesspool', 'laundry-system'] as const
export const FIELDS_OF_SOIL = ['trench', 'bed', 'chambers', 'mound', 'drip-field'] as const
export const LINES = ['building-sewer', 'effluent-line'] as const
export const BAFFLES = ['inlet-baffle', 'outlet-baffle'] as const
export const OPENINGS = ['access-opening', 'riser'] as const

const among =
  <K extends ComponentKind>(kinds: readonly K[]) =>
  (kind: ComponentKind): kind is K =>
    (kinds as readonly ComponentKind[]).includes(kind)

export const isAbsorption = among(ABSORPTION_KINDS)
export const isLine = among(LINES)
/** The kinds that hold liquid up to an outlet and so have a capacity. */
export const isVessel = among(VESSELS)
