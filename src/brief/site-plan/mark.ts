import type { ComponentKind } from '../../catalog/kinds.ts'
import type { Region } from '../../geometry/position/region.ts'

/**
 * A thing drawn where it is on record or was found. Two ties with no side named give two marks, each the other's
 * mirror. Feet in the local frame: origin at corner A, x toward B, y away from the house.
 */
export type Mark = {
  readonly label: string
  readonly kind: ComponentKind
  readonly by: 'recorded' | 'found'
  readonly x: number
  readonly y: number
  /** The ground that holds the true place with the plan's coverage. */
  readonly region: Region
  /** One of two places that the ties meet at, because no side is named. */
  readonly mirror: boolean
}
