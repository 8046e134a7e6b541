/** Which day's rules and house a code question is asked for. */
export const OCCASIONS = ['when permitted', 'today'] as const
export type Occasion = (typeof OCCASIONS)[number]

/** How a figure stands to the least that is required. */
export type AgainstLeast = 'enough' | 'short' | 'too-close'

/** By the verdict of the comparison. */
export const AGAINST_LEAST = {
  suffices: 'enough',
  'falls-short': 'short',
  'too-close-to-call': 'too-close',
} as const satisfies Readonly<Record<string, AgainstLeast>>
