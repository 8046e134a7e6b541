import { ok } from '../../base/result.ts'
import { absorptionArea } from '../../geometry/absorption/absorption-area.ts'
import { type CountedSurface, surfaceThatCounts } from '../../geometry/absorption/absorption-shape.ts'
import { compareWithMinimum, type MinimumVerdict } from '../../measure/compare.ts'
import { under } from '../../measure/issue.ts'
import type { Step } from '../../measure/step.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import { requiredAbsorption } from '../../rules/apply/required-absorption.ts'
import type { Citation, Verified } from '../../rules/citation.ts'
import type { PackId } from '../../rules/pack.ts'
import { silenceWords } from '../../words/silence.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, invalid } from '../refusal.ts'
import { absorbingLengths, absorptionShapeOf, type MeasuredAbsorption } from './measured-absorption.ts'
import { readingsOf } from './readings.ts'
import { type RuleAsked, ruleAsked } from './rule-asked.ts'

export type AbsorptionAsked = {
  readonly shape: MeasuredAbsorption
  /** Which surfaces count; where null a pit's sidewall, and of the rest what the rule counts, else the bottom. */
  readonly counts: CountedSurface | null
  readonly required:
    | (RuleAsked & {
        readonly percRateMpi: number
        readonly bedrooms: number | null
        readonly flowGpd: number | null
        readonly soil: string | null
      })
    | null
}

export type AbsorptionAnswer = {
  readonly counts: CountedSurface
  readonly providedSqFt: Uncertain
  readonly steps: readonly Step[]
  readonly required: {
    readonly sqFt: number | null
    readonly silence: string | null
    readonly verdict: MinimumVerdict | null
    readonly pack: PackId | null
    readonly verified: Verified | null
    readonly citations: readonly Citation[]
  } | null
}

type Required = NonNullable<AbsorptionAnswer['required']> & {
  readonly counts: CountedSurface | null
  readonly steps: readonly Step[]
}

/** Absorption area provided, and against what the percolation table of a place asked on a day. */
export function calculateAbsorption(
  context: Pick<OperationContext, 'book' | 'clock'>,
  asked: AbsorptionAsked,
): Answer<AbsorptionAnswer> {
  const rule = asked.required ? requiredOf(context, asked.required, asked.shape) : ok(null)
  if (!rule.ok) return rule
  const counts = asked.counts ?? surfaceThatCounts(asked.shape.kind, rule.value?.counts ?? 'bottom')
  const area = absorptionArea(
    absorptionShapeOf(asked.shape, readingsOf(absorbingLengths(asked.shape))),
    counts,
  )
  if (!area.ok) return invalid(...under('/shape', area.error))
  const { value: providedSqFt, steps } = area.value
  if (!rule.value) return ok({ counts, providedSqFt, steps, required: null })
  const { counts: _, steps: ruleSteps, ...required } = rule.value
  const compared = required.sqFt === null ? null : compareWithMinimum(providedSqFt, required.sqFt, 'sq ft')
  return ok({
    counts,
    providedSqFt,
    steps: [...steps, ...ruleSteps, ...(compared?.steps ?? [])],
    required: { ...required, verdict: compared?.value.verdict ?? null },
  })
}

/** Gravel below the pipe, inches. */
const gravelOf = (shape: MeasuredAbsorption): number | null =>
  shape.kind === 'trenches' && shape.effectiveDepth ? shape.effectiveDepth.ft * 12 : null

function requiredOf(
  context: Pick<OperationContext, 'book' | 'clock'>,
  { percRateMpi, bedrooms, flowGpd, soil, ...asked }: NonNullable<AbsorptionAsked['required']>,
  shape: MeasuredAbsorption,
): Answer<Required> {
  const found = ruleAsked(context, asked, 'absorption.perc-table')
  if (!found.ok) {
    return found.error.why === 'invalid' ? invalid(...under('/required', found.error.issues)) : found
  }
  const { answer: table, silence } = found.value
  const none = {
    sqFt: null,
    verdict: null,
    counts: null,
    steps: [],
  }
  if (table.state !== 'in-force') return ok({ ...none, silence, pack: null, verified: null, citations: [] })
  const { pack, verified, citations } = table
  const required = requiredAbsorption(table, {
    minutesPerInch: percRateMpi,
    soil,
    bedrooms,
    flowGpd,
    bed: shape.kind === 'bed',
    pit: shape.kind === 'pits',
    gravelIn: gravelOf(shape),
  })
  if (required.ok) {
    const { value, steps } = required.value
    return ok({
      sqFt: value.sqFt,
      counts: value.counts,
      silence: null,
      verdict: null,
      pack,
      verified,
      citations,
      steps,
    })
  }
  const { reason } = required.error
  const says = silenceWords(required.error)
  if (reason === 'needs-bedrooms') return invalid({ pointer: '/required/bedrooms', message: says })
  if (reason === 'needs-flow') return invalid({ pointer: '/required/flowGpd', message: says })
  return ok({ ...none, silence: says, pack, verified, citations })
}
