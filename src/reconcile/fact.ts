import type { Claim } from '../records/as-built.ts'
import type { Exhibit } from './outcome.ts'

/**
 * What is known of one thing a check needs. Only a known fact reaches the check; the others are answered by the
 * runner, with the words given here, so that no check ever has to think about silence.
 */
export type Fact<T> =
  | { readonly state: 'known'; readonly value: T; readonly exhibits: readonly Exhibit[] }
  /** Nobody said or measured it. */
  | { readonly state: 'lacking'; readonly what: string }
  /** It is on the paper and can't be read, or the papers contradict each other. */
  | { readonly state: 'doubtful'; readonly what: string; readonly exhibits: readonly Exhibit[] }
  /** The question does not arise. */
  | { readonly state: 'beside'; readonly why: string }

export const known = <T>(value: T, ...exhibits: Exhibit[]): Fact<T> => ({ state: 'known', value, exhibits })
export const lacking = (what: string): Fact<never> => ({ state: 'lacking', what })
export const beside = (why: string): Fact<never> => ({ state: 'beside', why })

/** A claim of the record as a fact: `what` names it in words, `print` shows it as used. */
export function claimFact<T>(claim: Claim<T>, what: string, print: (value: T) => string): Fact<T> {
  const exhibit = (value: T, origin: Exhibit['from'] & { kind: 'permit' }): Exhibit => ({
    what,
    word: 'stated',
    asStated: writtenAs(value) ?? print(value),
    asUsed: print(value),
    from: origin,
  })
  switch (claim.state) {
    case 'stated':
      return known(claim.value, exhibit(claim.value, { kind: 'permit', origin: claim.origin }))
    case 'silent':
      return lacking(`the record does not state ${what}`)
    case 'unreadable':
      return {
        state: 'doubtful',
        what: `${what} can't be read on permit ${claim.origin.permit.number}: ${claim.note}`,
        exhibits: [],
      }
    case 'contradictory':
      return {
        state: 'doubtful',
        what: `the permits contradict each other on ${what}: ${claim.claims
          .map(({ value, origin }) => `${writtenAs(value) ?? print(value)} on ${origin.permit.number}`)
          .join(', ')}`,
        exhibits: claim.claims.map(({ value, origin }) => exhibit(value, { kind: 'permit', origin })),
      }
  }
}

const writtenAs = (value: unknown): string | null =>
  typeof value === 'object' && value !== null && 'asWritten' in value ? String(value.asWritten) : null

/** The first fact that is known; else the first that is doubtful; else the first. */
export function firstKnown<T>(...facts: readonly [Fact<T>, ...Fact<T>[]]): Fact<T> {
  return (
    facts.find(({ state }) => state === 'known') ??
    facts.find(({ state }) => state === 'doubtful') ??
    facts[0]
  )
}
