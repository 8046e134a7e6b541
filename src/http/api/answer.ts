import { unreachable } from '../../base/invariant.ts'
import type { Answer, Refusal } from '../../operations/refusal.ts'
import { stale } from '../plugins/entity-tag.ts'
import { invalidInput, type Problem, problem } from '../problem.ts'

/** What an operation answered; a refusal is thrown as the problem that it is. */
export function answered<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value
  throw problemOf(answer.error)
}

function problemOf(refusal: Refusal): Problem {
  switch (refusal.why) {
    case 'not-found':
      return problem('not-found', refusal.says === undefined ? {} : { detail: refusal.says })
    case 'not-allowed':
      return problem('not-allowed', { detail: refusal.says })
    case 'conflict':
      return problem('conflict', { detail: refusal.says })
    case 'quota':
      return problem('quota-reached', {
        detail: refusal.says,
        headers: { 'retry-after': String(refusal.retryAfterSeconds) },
      })
    case 'stale':
      return stale()
    case 'invalid':
      return invalidInput(refusal.issues)
    default:
      return unreachable(refusal, 'refusal')
  }
}
