import type { Claim } from '../records/as-built.ts'
import type { Part } from '../records/part.ts'
import type { PaperText } from '../records/whose.ts'
import type { Aside, Gap } from './gap.ts'
import type { Exhibit } from './outcome.ts'
import type { Shown, Thing } from './thing.ts'

/**
 * What is known of one thing a check needs. Only a known fact reaches the check; the others are answered by the
 * runner, with the reason given here, so that no check ever has to think about silence.
 */
export type Fact<T> =
  | { readonly state: 'known'; readonly value: T; readonly exhibits: readonly Exhibit[] }
  /** Nobody said or measured it. */
  | { readonly state: 'lacking'; readonly gap: Gap }
  /** It is on the paper and can't be read, or the papers contradict each other. */
  | {
      readonly state: 'doubtful'
      readonly gap: Extract<Gap, { gap: 'unreadable' | 'contradictory' }>
      readonly exhibits: readonly Exhibit[]
    }
  /** The question does not arise. */
  | { readonly state: 'beside'; readonly aside: Aside }

export const known = <T>(value: T, ...exhibits: Exhibit[]): Fact<T> => ({ state: 'known', value, exhibits })
export const lacking = (gap: Gap): Fact<never> => ({ state: 'lacking', gap })
export const beside = (aside: Aside): Fact<never> => ({ state: 'beside', aside })

/** A claim of the record as a fact: which thing of which part it is, and how its value is shown as used. */
export function claimFact<T>(claim: Claim<T>, thing: Thing, part: Part, show: (value: T) => Shown): Fact<T> {
  const exhibit = (value: T, origin: Exhibit['from'] & { kind: 'permit' }): Exhibit => ({
    thing,
    part,
    word: 'stated',
    asStated: writtenAs(value),
    used: show(value),
    from: origin,
  })
  switch (claim.state) {
    case 'stated':
      return known(claim.value, exhibit(claim.value, { kind: 'permit', origin: claim.origin }))
    case 'silent':
      return lacking({ gap: 'not-on-record', thing, part })
    case 'unreadable': {
      const { origin, note } = claim
      return {
        state: 'doubtful',
        gap: { gap: 'unreadable', thing, part, permit: origin.permit.number, note },
        exhibits: [],
      }
    }
    case 'contradictory':
      return {
        state: 'doubtful',
        gap: {
          gap: 'contradictory',
          thing,
          part,
          claims: claim.claims.map(({ value, origin }) => ({
            value: show(value),
            permit: origin.permit.number,
          })),
        },
        exhibits: claim.claims.map(({ value, origin }) => exhibit(value, { kind: 'permit', origin })),
      }
  }
}

const writtenAs = (value: unknown): PaperText | null =>
  typeof value === 'object' && value !== null && 'asWritten' in value ? String(value.asWritten) : null

/** The first fact that is known; else the first that is doubtful; else the first. */
export function firstKnown<T>(...facts: readonly [Fact<T>, ...Fact<T>[]]): Fact<T> {
  return (
    facts.find(({ state }) => state === 'known') ??
    facts.find(({ state }) => state === 'doubtful') ??
    facts[0]
  )
}
