import { minus, type Uncertain } from '../../measure/uncertain.ts'

/**
 * A place in the local frame, feet: origin at reference corner A, x toward corner B, y away from the house. How x and y
 * move together is in the causes they share, so no covariance is carried beside them.
 */
export type Point = { readonly x: Uncertain; readonly y: Uncertain }

/** Covariance of x and y, square feet. */
export type Covariance = { readonly xx: number; readonly xy: number; readonly yy: number }

/** Σ over causes of shift·shift: JCGM 100:2008 F.1.2.3, covariance from the causes that two estimates share. */
export function covariance({ x, y }: Point): Covariance {
  let [xx, xy, yy] = [0, 0, 0]
  for (const [cause, dx] of x.causes) {
    xx += dx * dx
    xy += dx * (y.causes.get(cause) ?? 0)
  }
  for (const dy of y.causes.values()) yy += dy * dy
  return { xx, xy, yy }
}

/** Distance root mean square, √(σx² + σy²): one number for how well a place is known. */
export const drms = ({ xx, yy }: Covariance): number => Math.sqrt(xx + yy)

/** From `a` to `b`; what the two share (one baseline, one corner) cancels as far as it should. */
export const offset = (a: Point, b: Point): Point => ({ x: minus(b.x, a.x), y: minus(b.y, a.y) })
