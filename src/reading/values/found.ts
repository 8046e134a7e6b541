import type { Doubt } from '../proposal.ts'

/** A value found in a text: where, what it is as the permit entry takes it, and how well the text fits its kind. */
export type Found<T extends string | number = string | number> = {
  readonly start: number
  readonly end: number
  readonly value: T
  /** 1 for a full spelling with its unit; less where something had to be supplied. */
  readonly fit: number
  readonly doubts: readonly Doubt[]
}

/** All matches of a pattern that a maker accepts, in order. */
export function matches<T extends string | number>(
  text: string,
  pattern: RegExp,
  make: (match: RegExpExecArray) => Omit<Found<T>, 'start' | 'end'> | undefined,
): Found<T>[] {
  const found: Found<T>[] = []
  const all = new RegExp(pattern, pattern.flags.includes('g') ? pattern.flags : `${pattern.flags}g`)
  for (let match = all.exec(text); match; match = all.exec(text)) {
    const made = match[0] === '' ? undefined : make(match)
    if (made) found.push({ start: match.index, end: match.index + match[0].length, ...made })
    else all.lastIndex = match.index + 1
  }
  return found
}
