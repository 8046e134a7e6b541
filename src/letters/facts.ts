import type { StatusWord } from '../reconcile/status.ts'
import type { DecisionAction } from '../records/decision.ts'

/**
 * What a letter rests on, named closely enough to tell later whether it still says what the file says. By ids,
 * revisions and hashes of evidence, never by wording: another way of saying the same supersedes nothing. Null is what
 * a letter of its kind does not speak of.
 */
export type LetterFacts = {
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

/** What has come in between two states of the facts, in words that tell nothing of what came in; empty where nothing has. */
export function changesSince(then: LetterFacts, now: LetterFacts): readonly string[] {
  const moved = (part: keyof LetterFacts): boolean =>
    then[part] !== null && inOrder(then[part]) !== inOrder(now[part])
  return [
    ...(moved('permits') ? ['A permit was entered or corrected.'] : []),
    ...(moved('corrections') ? ['The county corrected its record, or took a correction back.'] : []),
    ...(moved('findings') ? ['Findings of an inspection were handed in or amended.'] : []),
    ...(moved('differences') ? ['A difference appeared, changed, was decided or went away.'] : []),
    ...(moved('word') ? ['The status is another one now.'] : []),
  ]
}

/** Lists are sets here: the order in which a database gives them says nothing. */
const inOrder = (part: unknown): string =>
  Array.isArray(part) ? part.map(stable).sort().join() : stable(part)

/** What was stored comes back with its keys in another order. */
const stable = (value: unknown): string =>
  typeof value === 'object' && value !== null
    ? JSON.stringify(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : JSON.stringify(value)
