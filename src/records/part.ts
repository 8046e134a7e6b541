import type { ComponentKind } from '../catalog/kinds.ts'
import type { FirmText, OurText, PaperText } from './whose.ts'

/** What an answer is about: a component on record, one that was found and is not, or the system as a whole. */
export type Part = {
  /** The as-built's key; `found/…` where it is not on record; `system` for the whole. */
  readonly key: string
  readonly kind: ComponentKind | 'system'
  /** As the permit names it or, where it is not on record, as the firm does. Not for agents. */
  readonly label: PaperText | FirmText
  /** What tells it from others of its kind, where its label ends in a number or a letter: `2`, `B`. For everybody. */
  readonly mark: OurText | null
  readonly onRecord: boolean
}

type Found = { readonly label: FirmText; readonly kind: ComponentKind }
type Recorded = { readonly key: string; readonly label: PaperText; readonly kind: ComponentKind }

export const SYSTEM: Part = {
  key: 'system',
  kind: 'system',
  label: 'the system',
  mark: null,
  onRecord: true,
}

/** The building that ties run from: what keeps its distance from it is asked, and it is a part of nothing. */
export const HOUSE: Part = { key: 'house', kind: 'system', label: 'the house', mark: null, onRecord: true }

export const partOnRecord = ({ key, label, kind }: Recorded): Part => ({
  key,
  kind,
  label,
  mark: markOf(label),
  onRecord: true,
})

/** A part that answers to nothing on record goes by the firm's label, which is all that tells it from others. */
export const partFound = ({ label, kind }: Found): Part => ({
  key: `found/${label}`,
  kind,
  label,
  mark: markOf(label),
  onRecord: false,
})

/** The last word of a label, if it is one letter or a number of at most two digits: nothing a person could be known by. */
export const markOf = (label: string): OurText | null =>
  (/(?:^|[\s#])([a-z]|\d{1,2})$/i.exec(label.trim())?.[1]?.toUpperCase() ?? null) as OurText | null
