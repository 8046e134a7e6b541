import type { ruleBook, Standing } from '../../rules/book.ts'
import type { ParameterName } from '../../rules/parameters.ts'
import type { InspectionForm } from './form/typed.ts'
import type { ReckonWith } from './live/reckon.ts'
import type { InspectionSheet } from './sheet/sheet.ts'
import type { PhotoShown } from './view/shown.ts'

/** What a phone takes along to a parcel. */
export type InspectionFile = {
  /** Whose it is: drafts on a phone that several people sign in on are kept apart by it. */
  readonly account: string
  readonly sheet: InspectionSheet
  /** All that the inspection is reckoned with, but for the rules, which many parcels share. */
  readonly given: Omit<ReckonWith, 'book' | 'findings'>
  /** Where the rules are; the address carries their hash. */
  readonly rules: string
  /** The firm's own draft as the service has it. */
  readonly draft: {
    readonly id: string
    readonly revision: number
    readonly form: InspectionForm
    readonly changedAt: string
    readonly amends: boolean
  } | null
  readonly submitted: { readonly id: string; readonly inspectedOn: string } | null
  readonly photos: readonly PhotoShown[]
}

/** The rules of the parcel's place, as they travel. */
export type InspectionRules = {
  readonly place: string
  readonly standings: readonly (readonly [ParameterName, readonly Standing[]])[]
}

/** A rule book with one place in it: lookups for that place answer as the whole book does. */
export const bookOf = ({ place, standings }: InspectionRules): ReturnType<typeof ruleBook> =>
  ({
    packs: new Map(),
    places: new Map([[place, { layers: [], standings: new Map(standings) }]]),
  }) as unknown as ReturnType<typeof ruleBook>
