import type { ReasonOf } from '../reconcile/reason.ts'
import { the } from './part.ts'
import { figure, ruleFeet } from './quantity.ts'
import { sourceNote } from './rules.ts'
import { listed } from './sentence.ts'

/** Why it is the end of a span: a setback is kept from edge to edge. */
const SPANS: { readonly [S in NonNullable<ReasonOf<'setback'>['span']>]: string } = {
  'at-least':
    '; which way it runs, or which point of it was tied, is not known, so its nearest possible edge counts',
  'at-most': '; its edge may be nearer still',
  'size-unknown': '; its size is not known, so its edge may be nearer',
}

/** How far a part keeps from a well or the house, which end of a span that is, and what the rule requires. */
export function setbackWords(
  name: string,
  is: string,
  { from, distance, span, least, source, ambiguous, unplaced, by, occasion }: ReasonOf<'setback'>,
): string {
  const notes = [
    span === null ? '' : SPANS[span],
    ambiguous ? '; the side is not stated, so the nearer of the possible places counts' : '',
    unplaced.length > 0 ? `; nothing tells where ${listed(unplaced.map(the))} lies` : '',
  ].join('')
  const whose = by === 'lender' ? 'the lender’s program' : occasion === 'today' ? 'today’s rule' : 'the rule'
  const end = span === null ? '' : span === 'at-least' ? 'at least ' : 'at most '
  return `${name} ${is} ${end}${figure(distance)} from ${the(from)}; ${whose} requires ${ruleFeet(least)}${sourceNote(source)}${notes}`
}
