import type { Material, Side, VesselShape, WALLS } from '../catalog/choices.ts'
import type { ComponentKind } from '../catalog/kinds.ts'
import type { PERMIT_ACTIONS, PermitKind } from '../records/permit.ts'
import type { Box } from '../records/source.ts'

/** How a value was found: by a label, by a taught form, by what stands around it, by a tick. */
export const FOUND_HOW = ['label', 'family', 'table', 'prose', 'tick'] as const
export type FoundHow = (typeof FOUND_HOW)[number]

/** The words on the page that say what a value is; null where only its form and its neighbors do. */
export type Why = { readonly words: string; readonly box: Box } | null

/** Why a proposed value may be wrong, in words; `readings` are the values that would pass. */
export type Doubt = {
  readonly kind:
    | 'confusable-digits'
    | 'out-of-range'
    | 'arithmetic'
    | 'date-order'
    | 'not-in-county'
    | 'readers-differ'
    | 'other-value-on-paper'
    | 'unit-assumed'
    | 'meaning-assumed'
    | 'belongs-unclear'
    | 'faint'
  readonly says: string
  readonly readings: readonly (string | number)[]
}

/** Who saw a value: a file's own text, two readers of a picture alike, or one of them alone or against the other. */
export const SEEN_BY = ['text', 'alike', 'alone'] as const
export type SeenBy = (typeof SEEN_BY)[number]

/** One proposed value, with the place on the paper that says it. */
export type ProposedField = {
  /** JSON Pointer into the permit entry: `/components/0/capacity`. `/parcelNumber` and `/address` are the paper's own. */
  readonly pointer: string
  /** As the permit entry accepts it. */
  readonly value: string | number
  /** The words on the page, as read. */
  readonly words: string
  readonly page: number
  readonly box: Box
  /** The share of such readings that are right, 0 to 1. */
  readonly confidence: number
  /** The confidence as readings are worth everywhere, before the county's own confirmations moved it. */
  readonly general?: { readonly confidence: number; readonly seenBy: SeenBy }
  readonly how: FoundHow
  readonly why: Why
  /** Two independent readers of the picture gave the same value and it is clear what of; null where only one read. */
  readonly readAlike: boolean | null
  readonly doubts: readonly Doubt[]
}

export type TieDraft = { a?: string; b?: string; side?: Side; sideWords?: string }
export type ComponentDraft = {
  tag: string
  kind: ComponentKind
  action?: (typeof PERMIT_ACTIONS)[number]
  replaces?: string[]
  shape?: VesselShape
  length?: string
  width?: string
  diameter?: string
  liquidDepth?: string
  insideHeight?: string
  wallThickness?: string
  effectiveDepth?: string
  area?: number
  depthToTop?: string
  pipeDiameter?: string
  capacity?: string
  compartments?: number
  count?: number
  material?: Material
  tie?: TieDraft
  note?: string
}

/** A permit entry as far as the paper gave it; `permitEntry` accepts it once `missing` is filled in. */
export type EntryDraft = {
  number?: string
  kind?: PermitKind
  issuedOn?: string
  approvedOn?: string
  bedrooms?: number
  designFlowGpd?: number
  percRateMpi?: number
  soilTexture?: string
  reference?: {
    a?: string
    b?: string
    baseline?: string
    wall?: (typeof WALLS)[number]
    bearingDeg?: number
  }
  components: ComponentDraft[]
  remarks?: string
}

/** What one permit on paper seems to say. A proposal is never a fact: a person confirms it against the picture. */
export type ProposedPermit = {
  readonly pages: readonly number[]
  readonly fields: readonly ProposedField[]
  readonly entry: EntryDraft
  /** The parcel's number in the county's own spelling where it could be read as one. */
  readonly parcelNumber: ProposedField | null
  readonly address: ProposedField | null
  /** Pointers that `permitEntry` or the as-built cannot do without and the paper did not give. */
  readonly missing: readonly string[]
  /** Read, and not sure enough to be proposed: the field stays empty, and its place on the page is here to be shown. */
  readonly unsure: readonly ProposedField[]
  /** Name of the taught form that the pages were read by, null where none fitted. */
  readonly family: string | null
}
