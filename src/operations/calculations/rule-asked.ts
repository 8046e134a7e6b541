import { dayOf, type PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { type InForce, inForce } from '../../rules/in-force.ts'
import type { ParameterName } from '../../rules/parameters.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, invalid } from '../refusal.ts'

export type RuleAsked = {
  /** A place of the rule book, as `quillback`. */
  readonly rules: string
  /** The day whose law is asked for; today where null. */
  readonly on: PlainDate | null
}

export type RuleFound<N extends ParameterName> = {
  readonly on: PlainDate
  readonly answer: InForce<N>
  /** Why there is none; null where one is in force. */
  readonly silence: string | null
}

/** What a place goes by on a day; a place without packs is bad input. */
export function ruleAsked<N extends ParameterName>(
  { book, clock }: Pick<OperationContext, 'book' | 'clock'>,
  { rules, on }: RuleAsked,
  name: N,
): Answer<RuleFound<N>> {
  if (!book.places.has(rules)) {
    const places = [...book.places.keys()].sort().join(', ')
    return invalid({
      pointer: '/rules',
      message: `there are no rules for "${rules}"; choose one of: ${places}`,
    })
  }
  const day = on ?? dayOf(clock())
  const answer = inForce(book, rules, name, day)
  return ok({ on: day, answer, silence: silenceOf(answer, name) })
}

function silenceOf(answer: InForce<ParameterName>, name: ParameterName): string | null {
  switch (answer.state) {
    case 'in-force':
      return null
    case 'not-yet':
      return `No rule for ${name} was in force yet. The first one began on ${answer.from}.`
    case 'ended':
      return `The rule for ${name} had ended on ${answer.until}.`
    case 'no-record':
      return `The rule packs of this place have no ${name}.`
  }
}
