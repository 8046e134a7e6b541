import type { Severity } from '../kinds.ts'
import type { Outcome } from '../outcome.ts'

/** Who has to act next. */
export const ACTORS = ['owner', 'firm', 'reviewer', 'nobody'] as const
export type Actor = (typeof ACTORS)[number]

/** What a discrepancy means: how much it matters, a sentence for each audience, and what must happen next. */
export type Meaning = {
  readonly severity: Severity
  readonly sentences: { readonly firm: string; readonly reviewer: string; readonly agent: string }
  readonly next: { readonly who: Actor; readonly what: string }
}

export type MeaningOf = (outcome: Outcome) => Meaning

/** Whether what it rests on is, in part, a rule that nobody has read yet. */
export const isRemembered = ({ citations }: Outcome): boolean =>
  citations.some(({ verified }) => verified === 'from-memory')

/** A sentence: the reason, begun with a capital and closed with a full stop. */
export const sentence = (text: string): string => {
  const begun = text.charAt(0).toUpperCase() + text.slice(1)
  return /[.!?]$/.test(begun) ? begun : `${begun}.`
}
