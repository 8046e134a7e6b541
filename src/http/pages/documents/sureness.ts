import type { ProposedField } from '../../../reading/proposal.ts'

export type Sureness = 'surely' | 'again' | 'none'

export const SURENESS_WORDS: { readonly [S in Sureness]: string } = {
  surely: 'read surely',
  again: 'look again',
  none: 'not read',
}

/** Of readings below this share that are right, each is held against the paper by itself. */
const SURE = 0.95

/** A doubt always asks for another look, however sure the reading of the signs is. */
export function surenessOf(field: ProposedField | undefined): Sureness {
  if (!field) return 'none'
  return field.confidence >= SURE && field.doubts.length === 0 && field.readAlike !== false
    ? 'surely'
    : 'again'
}
