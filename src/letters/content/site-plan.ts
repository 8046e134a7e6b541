import { describeSitePlan } from '../../brief/site-plan/describe.ts'
import { drawSitePlan } from '../../brief/site-plan/draw.ts'
import type { SitePlan } from '../../brief/site-plan/plan.ts'
import { printableThroughout } from './printable.ts'

/** The plan as a letter shows it; the words say the same as the drawing and are its alternative text. */
export type PlanPrinted = {
  /** `aspect`: width over height. */
  readonly drawing: { readonly svg: string; readonly aspect: number }
  readonly words: readonly string[]
}

/** The family that the drawing's labels are set in; the letters have no other. */
const FAMILY = 'Atkinson Hyperlegible Next'

export function printPlan(plan: SitePlan | null): PlanPrinted | null {
  if (!plan) return null
  const named = printableThroughout(plan)
  const svg = drawSitePlan(named).replace(/font-family="[^"]*"/, `font-family="${FAMILY}"`)
  const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg) ?? []
  return {
    drawing: { svg, aspect: Number(width ?? 1) / Number(height ?? 1) },
    words: describeSitePlan(named),
  }
}
