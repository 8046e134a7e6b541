import { canonicalText } from '../base/canonical.ts'
import type { StatusWord } from '../reconcile/status.ts'
import type { DecisionAction } from '../records/decision.ts'

/**
 * What a letter rests on, named closely enough to tell later whether it still says what the file says. By ids,
 * revisions and hashes of evidence, never by wording: another way of saying the same supersedes nothing. Null is what
 * a letter of its kind does not speak of.
 */
export type LetterFacts = {
  /** The systems that it speaks of. */
  readonly systems?: readonly string[]
  readonly permits: readonly { readonly id: string; readonly revision: number }[]
  /** Decisions that correct the record. */
  readonly corrections: readonly string[]
  readonly findings: { readonly id: string | null } | null
  readonly differences: readonly DifferenceFact[] | null
  readonly word: StatusWord | null
}

export type DifferenceFact = {
  readonly key: string
  readonly evidence: string
  /** The action in force; null where nobody has decided, or the ground of the decision has moved. */
  readonly decided: DecisionAction | null
}

/** What may have come in since; it tells that something did, not what. */
export const SINCE = ['system', 'permit', 'correction', 'findings', 'difference', 'status'] as const
export type Since = (typeof SINCE)[number]

/** What has come in between two states of the facts; empty where nothing has. */
export function changesSince(then: LetterFacts, now: LetterFacts): readonly Since[] {
  const moved = (part: keyof LetterFacts): boolean =>
    (then[part] ?? null) !== null && inOrder(then[part]) !== inOrder(now[part])
  return [
    ...(moved('systems') ? ['system' as const] : []),
    ...(moved('permits') ? ['permit' as const] : []),
    ...(moved('corrections') ? ['correction' as const] : []),
    ...(moved('findings') ? ['findings' as const] : []),
    ...(moved('differences') ? ['difference' as const] : []),
    ...(moved('word') ? ['status' as const] : []),
  ]
}

/** Lists are sets here: the order in which a database gives them says nothing. */
const inOrder = (part: unknown): string =>
  Array.isArray(part) ? part.map(canonicalText).sort().join() : canonicalText(part)
