import type { Uncertain } from '../../measure/uncertain.ts'

/**
 * The inside of a tank up to its outlet invert. Every length is inside, in ft, with its uncertainty; `liquidDepth`
 * runs from the floor (for a lying shape: its lowest line) to the outlet invert, never to where the liquid happened
 * to stand. `insideHeight`, floor to the underside of the cover, is not needed for the capacity; where it is given the
 * depth is checked against it.
 */
export type TankShape =
  | Rectangular
  | VerticalCylinder
  | HorizontalCylinder
  | HorizontalOval
  | VerticalOval
  | LyingEllipse
  | Sphere
  | TwoCompartments
  | InSeries

/** Box; with `floorLength` or `floorWidth` the walls slope or taper and length and width are those at the liquid line. */
export type Rectangular = {
  readonly kind: 'rectangular'
  readonly length: Uncertain
  readonly width: Uncertain
  readonly liquidDepth: Uncertain
  readonly floorLength?: Uncertain
  readonly floorWidth?: Uncertain
  /** Radius of the four upright inside corners. */
  readonly cornerRadius?: Uncertain
  readonly insideHeight?: Uncertain
}

/** Standing cylinder; with `floorDiameter` a cone frustum whose `diameter` is that at the liquid line. */
export type VerticalCylinder = {
  readonly kind: 'vertical-cylinder'
  readonly diameter: Uncertain
  readonly liquidDepth: Uncertain
  readonly floorDiameter?: Uncertain
  readonly insideHeight?: Uncertain
}

/**
 * The two heads of a lying cylinder, alike. `rise` is how far a head bulges out along the axis past the straight
 * length. An elliptical head with no rise given is the 2:1 one, whose rise is a quarter of the diameter.
 */
export type Ends =
  | { readonly kind: 'flat' }
  | { readonly kind: 'spherical-segment'; readonly rise: Uncertain }
  | { readonly kind: 'elliptical'; readonly rise?: Uncertain }

/** Lying cylinder; `length` is the straight part between the heads. */
export type HorizontalCylinder = {
  readonly kind: 'horizontal-cylinder'
  readonly diameter: Uncertain
  readonly length: Uncertain
  readonly liquidDepth: Uncertain
  readonly ends?: Ends
}

/**
 * Lying tank whose section is two half circles with straight sides between: wider than high it has a flat floor and
 * cover, higher than wide it has upright sides. Flat ends.
 */
export type HorizontalOval = {
  readonly kind: 'horizontal-oval'
  readonly width: Uncertain
  readonly height: Uncertain
  readonly length: Uncertain
  readonly liquidDepth: Uncertain
}

/** Standing tank whose plan is two half circles with straight sides between; `length` is over all, not less than `width`. */
export type VerticalOval = {
  readonly kind: 'vertical-oval'
  readonly length: Uncertain
  readonly width: Uncertain
  readonly liquidDepth: Uncertain
  readonly insideHeight?: Uncertain
}

/** Lying tank of elliptical section with flat ends. */
export type LyingEllipse = {
  readonly kind: 'horizontal-ellipse'
  readonly width: Uncertain
  readonly height: Uncertain
  readonly length: Uncertain
  readonly liquidDepth: Uncertain
}

export type Sphere = {
  readonly kind: 'sphere'
  readonly diameter: Uncertain
  readonly liquidDepth: Uncertain
}

/** One tank with a partition: the two sides, the partition in neither. */
export type TwoCompartments = {
  readonly kind: 'two-compartments'
  readonly first: TankShape
  readonly second: TankShape
}

/** Tanks one after the other, first to last. */
export type InSeries = { readonly kind: 'in-series'; readonly tanks: readonly TankShape[] }
