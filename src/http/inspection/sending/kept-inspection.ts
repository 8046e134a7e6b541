import type { StatusShown } from '../../pages/parts/status-panel.ts'
import type { InspectionForm } from '../form/typed.ts'

/** A copy of the inspection as the service has it. */
export type Base = { readonly id: string; readonly revision: number; readonly form: InspectionForm }

/**
 * A request to the service. It is kept before it leaves and repeated, byte for byte and under the same key, until it
 * has been answered: an answer that got lost on the way changes nothing.
 */
export type Request = {
  readonly what: 'begin' | 'change' | 'hand-in' | 'look' | 'amend'
  readonly method: 'GET' | 'POST' | 'PUT'
  readonly path: string
  /** Idempotency-Key and If-Match, where they belong. */
  readonly key: string | null
  readonly match: string | null
  readonly body: string | null
  /** What it says, and which change of this phone that was. */
  readonly form: InspectionForm
  readonly change: number
}

/** What became of an inspection that was submitted. */
export type Done = {
  readonly findings: string
  readonly status: StatusShown | null
  readonly at: string
}

/** An inspection as a phone keeps it. */
export type KeptInspection = {
  readonly account: string
  readonly county: string
  readonly parcel: { readonly id: string; readonly number: string; readonly address: string | null }
  readonly form: InspectionForm
  /** Counts what was changed here; `saved` is the change that the service has. */
  readonly change: number
  readonly saved: number
  readonly base: Base | null
  readonly request: Request | null
  /** Made once with the inspection and kept with it. */
  readonly keys: { readonly begin: string; readonly handIn: string; readonly amend: string }
  /** Somebody asked to submit it. */
  readonly handIn: boolean
  /** Another copy that says something else: nothing is sent until a person has chosen. */
  readonly other: { readonly base: Base; readonly handedIn: boolean; readonly at: string } | null
  readonly done: Done | null
  /** Why the service would not take it. */
  readonly trouble: { readonly kind: 'sign-in' | 'refused' | 'gone'; readonly says: string } | null
  readonly keptAt: string
}

/** By whom and about what: two people on one phone don't see each other's. */
export const nameOf = ({
  account,
  county,
  parcel,
}: Pick<KeptInspection, 'account' | 'county'> & { readonly parcel: { readonly id: string } }): string =>
  `${account}/${county}/${parcel.id}`

type Begun = Pick<KeptInspection, 'account' | 'county' | 'parcel' | 'form' | 'base'>

export const beginKept = (begun: Begun, newKey: () => string, now: string): KeptInspection => ({
  ...begun,
  change: 0,
  saved: 0,
  request: null,
  keys: { begin: newKey(), handIn: newKey(), amend: newKey() },
  handIn: false,
  other: null,
  done: null,
  trouble: null,
  keptAt: now,
})

/** Something was typed. What the service refused before may be right now. */
export const changed = (inspection: KeptInspection, form: InspectionForm, now: string): KeptInspection => ({
  ...inspection,
  form,
  change: inspection.change + 1,
  trouble: inspection.trouble?.kind === 'refused' ? null : inspection.trouble,
  keptAt: now,
})
