/** What can be in the ground or belong to it. A dry well that takes effluent is a seepage pit (common practice). */
export const COMPONENT_KINDS = [
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
] as const
export type ComponentKind = (typeof COMPONENT_KINDS)[number]

/** The kinds that give effluent back to the soil. */
export const ABSORPTION_KINDS = ['seepage-pit', 'trench', 'bed', 'chambers', 'mound', 'drip-field'] as const
export type AbsorptionKind = (typeof ABSORPTION_KINDS)[number]

export const isAbsorption = (kind: ComponentKind): kind is AbsorptionKind =>
  (ABSORPTION_KINDS as readonly string[]).includes(kind)

export const isLine = (kind: ComponentKind): boolean => kind === 'building-sewer' || kind === 'effluent-line'

/** The kinds that hold liquid up to an outlet and so have a capacity. */
export const isVessel = (kind: ComponentKind): boolean => kind === 'tank' || kind === 'pump-chamber'

export const MATERIALS = [
  'concrete',
  'concrete-block',
  'brick',
  'stone',
  'steel',
  'fiberglass',
  'polyethylene',
  'wood',
  'cast-iron',
  'ductile-iron',
  'vitrified-clay',
  'bituminized-fiber',
  'asbestos-cement',
  'pvc',
  'abs',
  'gravel',
  'other',
] as const
export type Material = (typeof MATERIALS)[number]

export const VESSEL_SHAPES = [
  'rectangular',
  'vertical-cylinder',
  'horizontal-cylinder',
  'horizontal-oval',
  'vertical-oval',
  'sphere',
] as const
export type VesselShape = (typeof VESSEL_SHAPES)[number]

/**
 * The measures a permit states and an inspection finds, under the same names: `L` is how a length is held (as written, or
 * as taken with a method).
 */
export type Measures<L, V> = {
  readonly shape: VesselShape | null
  readonly length: L | null
  readonly width: L | null
  readonly diameter: L | null
  /** Floor to outlet invert. */
  readonly liquidDepth: L | null
  /** Floor to the underside of the cover. */
  readonly insideHeight: L | null
  readonly wallThickness: L | null
  /** Height of the absorbing part: a pit's sidewall below its inlet, the gravel below a trench's pipe. */
  readonly effectiveDepth: L | null
  /** Finished grade to the top of the component. */
  readonly depthToTop: L | null
  readonly pipeDiameter: L | null
  readonly capacity: V | null
  readonly compartments: number | null
  /** How many alike this entry stands for: three trenches of one length. */
  readonly count: number | null
  readonly material: Material | null
  readonly tie: Tie<L> | null
}

export const MEASURE_NAMES = [
  'shape',
  'length',
  'width',
  'diameter',
  'liquidDepth',
  'insideHeight',
  'wallThickness',
  'effectiveDepth',
  'depthToTop',
  'pipeDiameter',
  'capacity',
  'compartments',
  'count',
  'material',
  'tie',
] as const satisfies readonly (keyof Measures<unknown, unknown>)[]
export type MeasureName = (typeof MEASURE_NAMES)[number]

/** Which side of the reference wall's line: the open ground the wall faces, or the house's side. */
export const SIDES = ['away', 'toward'] as const
export type Side = (typeof SIDES)[number]

/** Two distances, one from each reference corner, and the side where it was said. */
export type Tie<L> = {
  readonly a: L
  readonly b: L
  readonly side: Side | null
  readonly sideWords: string | null
}

export const WALLS = ['front', 'rear', 'left', 'right'] as const

/**
 * The two house corners that ties run from. Both are corners of one wall; facing that wall from outside, A is on the
 * left and B on the right. The local frame has its origin at A, x toward B, y away from the house.
 */
export type Reference<L> = {
  readonly a: string
  readonly b: string
  readonly baseline: L | null
  readonly wall: (typeof WALLS)[number] | null
  /** Compass bearing from A to B in degrees, where someone took it. */
  readonly bearingDeg: number | null
}
