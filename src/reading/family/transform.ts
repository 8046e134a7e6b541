export type Point = { readonly x: number; readonly y: number }
export type Pair = { readonly from: Point; readonly to: Point }

/** x' = a x + b y + c and y' = d x + e y + f. */
export type Affine = {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

export const applied = ({ a, b, c, d, e, f }: Affine, { x, y }: Point): Point => ({
  x: a * x + b * y + c,
  y: d * x + e * y + f,
})

/** The turn, scale and shift that take two points to two others; null where they are one point. */
export function similarityThrough(one: Pair, other: Pair): Affine | null {
  const [x, y] = [other.from.x - one.from.x, other.from.y - one.from.y]
  const [u, v] = [other.to.x - one.to.x, other.to.y - one.to.y]
  const square = x * x + y * y
  if (square < 1) return null
  const a = (u * x + v * y) / square
  const d = (v * x - u * y) / square
  return {
    a,
    b: -d,
    c: one.to.x - a * one.from.x + d * one.from.y,
    d,
    e: a,
    f: one.to.y - d * one.from.x - a * one.from.y,
  }
}

/** The affine transform with the least squares of what is left over; null where the points lie on one line. */
export function affineThrough(pairs: readonly Pair[]): Affine | null {
  const n = pairs.length
  if (n < 3) return null
  const mean = (of: (pair: Pair) => number): number => pairs.reduce((sum, pair) => sum + of(pair), 0) / n
  const [mx, my, mu, mv] = [
    mean(({ from }) => from.x),
    mean(({ from }) => from.y),
    mean(({ to }) => to.x),
    mean(({ to }) => to.y),
  ]
  // About the means the shift drops out: two unknowns are left for each coordinate.
  const spread = (one: (pair: Pair) => number, other: (pair: Pair) => number): number =>
    pairs.reduce((sum, pair) => sum + one(pair) * other(pair), 0)
  const [x, y] = [({ from }: Pair) => from.x - mx, ({ from }: Pair) => from.y - my]
  const [u, v] = [({ to }: Pair) => to.x - mu, ({ to }: Pair) => to.y - mv]
  const [xx, xy, yy] = [spread(x, x), spread(x, y), spread(y, y)]
  const determinant = xx * yy - xy * xy
  if (determinant < 1e-6 * xx * yy || determinant === 0) return null
  const solved = (xw: number, yw: number): readonly [number, number] => [
    (xw * yy - yw * xy) / determinant,
    (yw * xx - xw * xy) / determinant,
  ]
  const [a, b] = solved(spread(x, u), spread(y, u))
  const [d, e] = solved(spread(x, v), spread(y, v))
  return { a, b, c: mu - a * mx - b * my, d, e, f: mv - d * mx - e * my }
}
