import type { NonEmpty } from '../base/non-empty.ts'
import type { PartialDate } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { MeasureName, SystemField } from '../catalog/catalog.ts'
import type { ComponentKind } from '../catalog/kinds.ts'
import type { StatedLength } from '../measure/parse/length.ts'
import type { StatedVolume } from '../measure/parse/volume.ts'
import type { Measures, Reference } from './component.ts'
import type { Part } from './part.ts'
import type { PermitKind, PermitRecord } from './permit.ts'
import type { Source } from './source.ts'
import type { PaperText } from './whose.ts'

export type PermitRef = {
  readonly id: string
  readonly revision: number
  readonly number: string
  readonly kind: PermitKind
  readonly issuedOn: PartialDate | null
  readonly approvedOn: PartialDate | null
}

/** Which paper says it, where on it, and how it came to be read. */
export type Origin = { readonly permit: PermitRef; readonly pointer: string; readonly source: Source }

/** What the file says of one thing: one value, none, one that can't be read, or several that can't all be true. */
export type Claim<T> =
  | {
      readonly state: 'stated'
      readonly value: T
      readonly origin: Origin
      /** The other papers of a list that several wrote: the stretches of a line. */
      readonly also?: readonly Origin[]
    }
  | { readonly state: 'silent' }
  | { readonly state: 'unreadable'; readonly note: PaperText; readonly origin: Origin }
  | {
      readonly state: 'contradictory'
      readonly claims: NonEmpty<{ readonly value: T; readonly origin: Origin }>
    }

type Stated = Measures<StatedLength, StatedVolume>
export type MeasureClaims = { readonly [Name in MeasureName]: Claim<NonNullable<Stated[Name]>> }

export type ComponentEvent = {
  readonly what: 'installed' | 'replaced' | 'altered' | 'abandoned' | 'mentioned'
  readonly permit: PermitRef
}

export type AsBuiltComponent = {
  /** Stable across folds: the first permit's id and the component's tag on it. */
  readonly key: string
  readonly label: PaperText
  readonly kind: ComponentKind
  readonly standing: 'in-service' | 'replaced' | 'abandoned'
  /** Key of the component that took its place. */
  readonly replacedBy: string | null
  readonly replaces: readonly string[]
  readonly measures: MeasureClaims
  readonly reference: Claim<Reference<StatedLength>>
  readonly events: NonEmpty<ComponentEvent>
}

/** Where permits can't both be followed: which, about which component, and among which others. */
export type Contradiction =
  | { readonly gap: 'put-in-twice'; readonly part: Part; readonly permits: readonly PermitRef[] }
  /** A repair puts in a field and does not say what becomes of the one that is there: beside it, or instead of it. */
  | {
      readonly gap: 'beside-or-instead'
      readonly part: Part
      readonly permit: string
      readonly among: readonly Part[]
      readonly permits: readonly PermitRef[]
    }
  /** The missing part of a date decides: whether a permit was approved by the day asked, or which of two came first. */
  | {
      readonly gap: 'approved-when' | 'order-unclear'
      readonly part: Part
      readonly permits: readonly PermitRef[]
    }
  | {
      readonly gap: 'no-target' | 'which-target'
      readonly verb: 'replace' | 'alter' | 'abandon'
      /** The permit that says so, and all that it may mean. */
      readonly permit: string
      readonly part: Part
      readonly among: readonly Part[]
      readonly permits: readonly PermitRef[]
    }

/** What the file says of the whole system, field by field. */
export type SystemClaims = { readonly [Name in SystemField]: Claim<NonNullable<PermitRecord[Name]>> }

/** What should be in the ground on a day: the approved permits folded in date order, then reviewers' corrections. */
export type AsBuilt = SystemClaims & {
  readonly on: PlainDate
  readonly permits: readonly PermitRef[]
  /** In the file, but without a final approval by that day: they build nothing. */
  readonly unapproved: readonly PermitRef[]
  readonly components: readonly AsBuiltComponent[]
  readonly contradictions: readonly Contradiction[]
  /** Of a system that serves several parcels: what each puts on it, which no paper states together. */
  readonly loads?: readonly LoadOfParcel[]
}

/** What one parcel puts on a system: by the permits of its file, and as the county says, which comes first. */
export type LoadOfParcel = {
  readonly parcel: string
  readonly bedrooms: Claim<number>
  readonly designFlowGpd: Claim<number>
  readonly said: { readonly bedrooms: number | null; readonly designFlowGpd: number | null }
}

/** A reviewer's correction of what a permit is taken to say: applied after the permits, newest last. */
export type Correction = {
  readonly decision: string
  readonly on: PlainDate
  readonly by: string
  /** The permit whose value it corrects. */
  readonly permit: string
  /** Key of the component; null for a value of the whole system (`bedrooms`). */
  readonly component: string | null
  readonly field: MeasureName | SystemField
  readonly value: unknown
}
