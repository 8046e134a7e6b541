import { canonicalText } from '../../base/canonical.ts'
import { type AnswerChange, compareAnswers } from '../../operations/rule-trials/compare-answers.ts'
import { type Answer, keptForm } from '../../reconcile/kept.ts'

/** How one answer differs from another; null where they are the same to the byte. */
export type Difference = {
  readonly name: string
  /** Empty where only wording or working differs, and no difference more, less or on other ground. */
  readonly changes: readonly AnswerChange[]
}

export function difference(name: string, before: Answer, after: Answer): Difference | null {
  if (canonicalText(keptForm(before)) === canonicalText(keptForm(after))) return null
  return { name, changes: compareAnswers(before, after) }
}

const WORDS = { appears: 'appears', vanishes: 'vanishes', changes: 'has other evidence' } as const

export function printed({ name, changes }: Difference): string {
  if (changes.length === 0) return `${name}: other words or working, same differences`
  return [
    name,
    ...changes.map(({ change, kind, about, inForce, proposed }) => {
      const says = change === 'vanishes' ? inForce : proposed
      return `  ${kind}, ${about}: ${WORDS[change]}. ${says}`
    }),
  ].join('\n')
}
