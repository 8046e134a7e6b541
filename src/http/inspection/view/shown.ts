import type { Faults } from '../form/read.ts'
import type { InspectionForm } from '../form/typed.ts'
import type { Difference, Live } from '../live/live.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'

/** A photo in the list of its component. */
export type PhotoShown = {
  readonly id: string
  /** The name of its component; null for one of the site. */
  readonly component: string | null
  /** Where its picture is; null while it is only on this phone. */
  readonly src: string | null
  /** When it was taken, in words. */
  readonly taken: string
  readonly says: string
}

/** All that a step shows. The service makes it for a plain page, the phone for itself; both by the same views. */
export type InspectionShown = {
  readonly sheet: InspectionSheet
  readonly form: InspectionForm
  readonly step: string
  readonly faults: Faults
  /** What the step comes to; null where there is nothing to compute with. */
  readonly live: Live | null
  /** What the whole inspection comes to, for the look back. */
  readonly differences: readonly Difference[]
  /** By the name of its step, what each vessel holds. */
  readonly holds: { readonly [step: string]: string }
  readonly draft: { readonly id: string; readonly revision: number } | null
  readonly photos: readonly PhotoShown[]
  /** Where the inspection is kept just now, in words. */
  readonly kept: string
  readonly notice: string | null
  /** Somebody asked to take the step's component off the list: it asks once more. */
  readonly asks: boolean
}
