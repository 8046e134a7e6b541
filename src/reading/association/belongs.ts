import type { SubjectKind } from '../asks.ts'
import type { LinkedValue } from './links.ts'

/** Of which kind a value's part is: null for the permit's own, `left-out` for what is no part of a system. */
export function partOf(
  { of, part }: LinkedValue,
  permit: readonly LinkedValue[],
): SubjectKind | null | 'left-out' {
  if (of === 'permit') return null
  if (of === 'other' || of === 'well') return 'left-out'
  if (of !== 'absorption') return of
  // A field named only as such takes the kind that the same part is named by elsewhere.
  const named = permit.find((other) => other.part === part && other.of !== 'absorption')
  return named && named.of !== 'permit' && named.of !== 'other' ? named.of : of
}
