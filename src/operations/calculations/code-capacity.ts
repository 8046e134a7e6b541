import type { PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { Step } from '../../measure/step.ts'
import { requiredCapacity } from '../../rules/apply/required-capacity.ts'
import type { Citation, Verified } from '../../rules/citation.ts'
import type { PackId } from '../../rules/pack.ts'
import type { Burden } from '../../rules/values/capacity-rule.ts'
import { silenceWords } from '../../words/silence.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, invalid } from '../refusal.ts'
import { type RuleAsked, ruleAsked } from './rule-asked.ts'

/** A dwelling goes by its own table; everything else by its flow. */
export const BUILDING_USES = ['dwelling', 'other'] as const
export type BuildingUse = (typeof BUILDING_USES)[number]

const RULES = { dwelling: 'tank.minimum-capacity', other: 'tank.minimum-capacity-by-flow' } as const

export type CodeCapacityAsked = RuleAsked & {
  readonly use: BuildingUse
  readonly bedrooms: number | null
  readonly flowGpd: number | null
  readonly burdens: readonly Burden[]
}

export type CodeCapacityAnswer = {
  readonly on: PlainDate
  readonly state: 'in-force' | 'not-yet' | 'ended' | 'no-record'
  /** Null where no rule is in force, or the one in force is silent here. */
  readonly requiredGal: number | null
  readonly silence: string | null
  readonly pack: PackId | null
  readonly verified: Verified | null
  readonly steps: readonly Step[]
  readonly citations: readonly Citation[]
  /** Rules further out that gave way to the nearest. */
  readonly overridden: readonly PackId[]
}

/** The least capacity a place's code asked on a day, with the row it came from and its source. */
export function calculateCodeCapacity(
  context: Pick<OperationContext, 'book' | 'clock'>,
  { use, bedrooms, flowGpd, burdens, ...asked }: CodeCapacityAsked,
): Answer<CodeCapacityAnswer> {
  const found = ruleAsked(context, asked, RULES[use])
  if (!found.ok) return found
  const { on, answer: rule, silence } = found.value
  if (rule.state !== 'in-force') return ok(silent(on, rule.state, silence))
  const required = requiredCapacity(rule, { bedrooms, flowGpd, burdens })
  const { pack, verified, citations } = rule
  const base = {
    on,
    state: rule.state,
    pack,
    verified,
    citations,
    overridden: rule.overridden.map((it) => it.pack),
  }
  if (required.ok) {
    return ok({ ...base, requiredGal: required.value.value, silence: null, steps: required.value.steps })
  }
  const { reason } = required.error
  const says = silenceWords(required.error)
  if (reason === 'needs-bedrooms') return invalid({ pointer: '/bedrooms', message: says })
  if (reason === 'needs-flow') return invalid({ pointer: '/flowGpd', message: says })
  return ok({ ...base, requiredGal: null, silence: says, steps: [] })
}

const silent = (
  on: PlainDate,
  state: CodeCapacityAnswer['state'],
  silence: string | null,
): CodeCapacityAnswer => ({
  on,
  state,
  requiredGal: null,
  silence,
  pack: null,
  verified: null,
  steps: [],
  citations: [],
  overridden: [],
})
