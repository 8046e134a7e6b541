import type { ProposedField } from '../../../reading/proposal.ts'

export type Sureness = 'high' | 'check' | 'none'

export const SURENESS_WORDS: { readonly [S in Sureness]: string } = {
  high: 'high confidence',
  check: 'check this',
  none: 'not read',
}

/** Values read with less confidence than this are checked against the scan one by one. */
const SURE = 0.95

/** A doubt always asks for a check, however clearly the characters were read. */
export function surenessOf(field: ProposedField | undefined): Sureness {
  if (!field) return 'none'
  return field.confidence >= SURE && field.doubts.length === 0 && field.readAlike !== false ? 'high' : 'check'
}
