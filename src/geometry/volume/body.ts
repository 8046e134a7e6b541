import type { Result } from '../../base/result.ts'
import type { Issue } from '../../measure/issue.ts'
import type { Step } from '../../measure/step.ts'
import type { Uncertain } from '../../measure/uncertain.ts'

/**
 * A liquid body that a shape file has measured out, before any unit is chosen: cu ft, ft and sq ft throughout.
 * `slopes[i]` is ∂V/∂(inputs[i]). `volumeAt` and `surfaceAt` are the same geometry as plain functions of the inputs'
 * values, in their order, for slopes that are not written out and for checks.
 */
export type Body = {
  readonly inputs: readonly Uncertain[]
  readonly cuFt: number
  readonly slopes: readonly number[]
  readonly volumeAt: (values: readonly number[]) => number
  /** Area of the liquid's surface: ∂V/∂(liquid depth). */
  readonly surfaceAt: (values: readonly number[]) => number
  readonly write: () => readonly Step[]
}

export type Measured = Result<Body, readonly Issue[]>
