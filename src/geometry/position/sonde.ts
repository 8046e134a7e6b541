import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { plus, propagate, standardUncertainty, type Uncertain, uncertain } from '../../measure/uncertain.ts'
import type { Point } from './point.ts'

/** What the locator's maker, or a trial over a known depth, gives as limits of error: percent of depth and a fixed part. */
export type SondeLimits = {
  readonly depthPct: number
  readonly depthFt: number
  /** How far the spot marked on the ground may lie from above the sonde, percent of depth. */
  readonly offsetPct: number
}

/** Common practice where nothing better is known: depth to 10 % and an inch, the mark within 5 % of the depth. */
export const USUAL_SONDE_LIMITS: SondeLimits = { depthPct: 10, depthFt: 1 / 12, offsetPct: 5 }

export type SondeReading = {
  /** Ground to the sonde, ft. A sonde lies on the pipe's floor, so this is to about the invert. */
  readonly depth: Uncertain
  readonly point: Point
}

/** Limits ±a with nothing said between them: rectangular, u = a/√3 (JCGM 100:2008 4.3.7). */
const fromLimits = (a: number): number => a / Math.sqrt(3)

/**
 * A sonde pushed through a pipe and found from above: its depth with the locator's limits, and the marked spot with
 * the extra error that comes with depth. Ft.
 */
export function sondeReading(
  depthFt: number,
  marked: Point,
  limits: SondeLimits,
  name: string,
): Worked<SondeReading> {
  const depthLimit = (limits.depthPct / 100) * depthFt + limits.depthFt
  const depth = uncertain(depthFt, fromLimits(depthLimit), `${name} depth`)
  const aside = fromLimits((limits.offsetPct / 100) * depthFt)
  const point = {
    x: plus(marked.x, uncertain(0, aside, `${name} mark x`)),
    y: plus(marked.y, uncertain(0, aside, `${name} mark y`)),
  }
  return worked({ depth, point }, () => [
    {
      says: 'Depth of the sonde with the locator’s limits, nothing known between them',
      formula: 'u = (percent · depth + fixed) / √3',
      numbers: `(${n(limits.depthPct)} % × ${n(depthFt)} + ${n(limits.depthFt)}) / √3`,
      result: `${n(depthFt)} ft, u = ${n(standardUncertainty(depth))} ft`,
    },
  ])
}

/**
 * How far along the ground a camera has come when so much cable lies in the pipe and the pipe has dropped so far: the
 * level leg of the triangle, √(run² − drop²). Bends and slack make the true distance shorter still: it is an upper end.
 */
export function levelRun(run: Uncertain, drop: Uncertain): Result<Worked<Uncertain>, string> {
  if (!(run.value > Math.abs(drop.value)))
    return err(`a cable of ${n(run.value)} ft can’t have dropped ${n(drop.value)} ft`)
  const level = Math.sqrt(run.value ** 2 - drop.value ** 2)
  const value = propagate(level, [run, drop], [run.value / level, -drop.value / level])
  return ok(
    worked(value, () => [
      {
        says: 'Along the ground, at most',
        formula: '√(run² − drop²)',
        numbers: `√(${n(run.value)}² − ${n(drop.value)}²)`,
        result: `${n(level)} ft, u = ${n(standardUncertainty(value))} ft`,
      },
    ]),
  )
}

const n = (value: number): string => printSignificant(value, 4)
