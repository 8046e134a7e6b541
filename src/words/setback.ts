import type { ReasonOf } from '../reconcile/reason.ts'
import { KEPT_FROM_NOUNS } from './kept-from.ts'
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

const HOW: { readonly [H in ReasonOf<'setback'>['how']]: string } = {
  taped: ' by tape',
  stated: ', as the permit states it',
  placed: '',
}

/** How far a part keeps from a well or the house, which end of a span that is, and what the rule requires. */
export function setbackWords(
  name: string,
  is: string,
  { from, to, how, distance, span, least, source, ambiguous, unplaced, by, occasion }: ReasonOf<'setback'>,
): string {
  const notes = [
    span === null ? '' : SPANS[span],
    ambiguous ? '; the side is not stated, so the nearer of the possible places counts' : '',
    unplaced.length > 0 ? `; nothing tells where ${listed(unplaced.map(the))} lies` : '',
  ].join('')
  const whose = by === 'lender' ? 'the lender’s program' : occasion === 'today' ? 'today’s rule' : 'the rule'
  const end = span === null ? '' : span === 'at-least' ? 'at least ' : 'at most '
  return `${name} ${is} ${end}${figure(distance)} from ${from ? the(from) : KEPT_FROM_NOUNS[to]}${HOW[how]}; ${whose} requires ${ruleFeet(least)}${sourceNote(source)}${notes}`
}

/** A distance on record against the one that was taped. */
export const distanceRecordWords = (
  name: string,
  { to, found, recorded, comes }: ReasonOf<'distance-record'>,
): string =>
  `from ${name} to ${KEPT_FROM_NOUNS[to]} the inspection taped ${figure(found)}; the record says ${figure(recorded)}${comes === 'agrees' ? ', no farther off than measurement explains' : ''}`
