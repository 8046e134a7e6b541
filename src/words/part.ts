import type { Part } from '../records/part.ts'
import { KIND_NOUNS } from './nouns.ts'

/**
 * A part by name in the middle of a sentence, with its article: the tank, the D-box. A numbered or lettered one is a
 * proper name and takes none: tank 1, pit B. For the county's people and the inspector: the label is the permit's, or
 * the firm's where the part is not on record.
 */
export const the = ({ label, mark }: Pick<Part, 'label' | 'mark'>): string =>
  mark !== null || /^(?:the|a|an|no\.?)\s/i.test(label) ? label : `the ${label}`

/** Trenches are, a trench is: by the label's last letters, which is as far as a name tells. */
export const isOrAre = (part: Pick<Part, 'label'>): 'is' | 'are' => (isMany(part) ? 'are' : 'is')
export const wasOrWere = (part: Pick<Part, 'label'>): 'was' | 'were' => (isMany(part) ? 'were' : 'was')
export const itOrThem = (part: Pick<Part, 'label'>): 'it' | 'them' => (isMany(part) ? 'them' : 'it')
const isMany = ({ label }: Pick<Part, 'label'>): boolean => /[^s]s$/i.test(label)

/** A label with its kind where the label does not already say it: `D-box (distribution box)`. */
export const labelWithKind = ({ label, kind }: Pick<Part, 'label' | 'kind'>): string =>
  kind === 'system' || label.toLowerCase().includes(KIND_NOUNS[kind])
    ? label
    : `${label} (${KIND_NOUNS[kind]})`
