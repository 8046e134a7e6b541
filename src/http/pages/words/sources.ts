import type { Origin, PermitRef } from '../../../records/as-built.ts'
import type { Source } from '../../../records/source.ts'
import type { Verified } from '../../../rules/citation.ts'
import { fieldNoun } from '../../../words/fields.ts'
import { dayInWords } from './dates.ts'

/** `permit 74-118 (new, approved Jun 20, 1974)` */
export function permitInWords({ number, kind, issuedOn, approvedOn }: PermitRef): string {
  const date = approvedOn
    ? `approved ${dayInWords(approvedOn)}`
    : issuedOn
      ? `issued ${dayInWords(issuedOn)}, no final approval`
      : 'no date'
  return `permit ${number} (${kind}, ${date})`
}

/** Which part of a permit a pointer means: `/components/2/liquidDepth` is the liquid depth of its third component. */
export function placeOnPermit(pointer: string): string {
  const [part = '', index, field] = pointer.split('/').slice(1)
  if (part !== 'components' || index === undefined) return fieldNoun('permit', part)
  const which = `component ${Number(index) + 1}`
  return field === undefined ? which : `${which}, ${fieldNoun('component', field)}`
}

/** How a value came into the file. `names` turns account ids into what their holders are called. */
export function sourceInWords(source: Source, names: ReadonlyMap<string, string>): string {
  const by = (account: string) => names.get(account) ?? 'the county'
  switch (source.kind) {
    case 'typed':
      return `entered by ${by(source.by)}${source.on ? ` on ${dayInWords(source.on.slice(0, 10))}` : ''}`
    case 'document':
      return `read on page ${source.page} of the scan as “${source.words}”, confirmed by ${by(source.confirmedBy)}`
    case 'imported':
      return `imported from line ${source.line} of a list`
    case 'correction':
      return `set by a decision by ${by(source.by)}`
  }
}

export const originInWords = ({ permit, pointer }: Origin): string =>
  `${permitInWords(permit)}: ${placeOnPermit(pointer)}`

/** How a citation came to be here, as a reader must know it. */
export const VERIFIED_WORDS: { readonly [V in Verified]: string } = {
  read: 'read in the source',
  'second-hand': 'read in a second source',
  'from-memory': 'source not yet verified',
  'common-practice': 'common practice, no source',
}
