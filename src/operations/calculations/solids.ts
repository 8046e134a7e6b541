import type { PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { solidsFaults } from '../../geometry/solids/derive-solids.ts'
import { evaluateSolidsRule, type SolidsAnswer } from '../../geometry/solids/evaluate-solids-rule.ts'
import { READING_NAMES, type SolidsReadings } from '../../geometry/solids/solids-readings.ts'
import type { Step } from '../../measure/step.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { Citation } from '../../rules/citation.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, invalid } from '../refusal.ts'
import { readingsOf } from './readings.ts'
import { type RuleAsked, ruleAsked } from './rule-asked.ts'

export type SolidsAsked = RuleAsked & {
  readonly readings: { readonly [Name in keyof SolidsReadings]: FoundLength | undefined }
  /** Nominal size of the tank, for rules that go by it. */
  readonly nominalGal: number | null
}

export type SolidsAnswers = {
  readonly on: PlainDate
  readonly silence: string | null
  /** Thresholds of different authorities contradict each other: each rule answers under its own name. */
  readonly rules: readonly (SolidsAnswer & {
    readonly name: string
    readonly steps: readonly Step[]
    readonly citations: readonly Citation[]
  })[]
}

/** Whether scum and sludge call for pumping, under each rule in reach of a place on a day. */
export function calculateSolids(
  context: Pick<OperationContext, 'book' | 'clock'>,
  { readings: taken, nominalGal, ...asked }: SolidsAsked,
): Answer<SolidsAnswers> {
  const found = ruleAsked(context, asked, 'solids.rules')
  if (!found.ok) return found
  const given = Object.entries(taken).filter(
    (entry): entry is [keyof SolidsReadings, FoundLength] => !!entry[1],
  )
  const { plain } = readingsOf(given.map(([, length]) => length))
  const readings = Object.fromEntries(
    given.map(([name, length]) => [name, plain(length, READING_NAMES[name].replace(/^the /, ''), 'tank')]),
  ) as SolidsReadings
  const faults = solidsFaults(readings)
  if (faults.length > 0) {
    return invalid(...faults.map(({ pointer, message }) => ({ pointer: `/readings${pointer}`, message })))
  }
  const { on, answer, silence } = found.value
  if (answer.state !== 'in-force') return ok({ on, silence, rules: [] })
  return ok({
    on,
    silence,
    rules: answer.value.map((rule) => {
      const { value, steps } = evaluateSolidsRule(rule, readings, nominalGal)
      return { ...value, name: rule.name, steps, citations: rule.citations }
    }),
  })
}
