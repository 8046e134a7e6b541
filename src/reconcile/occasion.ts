import type { PartialDate } from '../base/partial-date.ts'
import type { AsBuiltComponent } from '../records/as-built.ts'
import type { FoundComponent } from '../records/findings.ts'
import { type Part, partFound, partOnRecord } from '../records/part.ts'
import { OCCASIONS, type Occasion } from './asked-of-code.ts'
import { type Case, permitDate } from './case.ts'

/** A part of the system in use: on record and found, on record alone, or found and on no record. */
export type InUse = {
  readonly part: Part
  readonly built: AsBuiltComponent | null
  readonly found: FoundComponent | null
}
export type Tank = {
  readonly part: Part
  readonly built: AsBuiltComponent | null
  readonly found: FoundComponent
}
export type OnOccasion = { readonly occasion: Occasion; readonly given: Case }

/** What is in use, whether or not a permit shows it. What was taken out of service is not. */
export const inUse = ({ pairings, unrecorded }: Case): readonly InUse[] => [
  ...pairings.map(({ built, found }) => ({ part: partOnRecord(built), built, found })),
  ...unrecorded
    .filter(({ outcome }) => outcome === 'found')
    .map((found) => ({ part: partFound(found), built: null, found })),
]

/** The same twice: as the law of its day has it, and as today's does. */
export const onEach = <T>(things: readonly T[], given: Case): readonly (T & OnOccasion)[] =>
  things.flatMap((it) => OCCASIONS.map((occasion) => ({ ...it, occasion, given })))

/** The day whose law is asked; null where no permit dates it. */
export const ruleDay = ({
  built,
  occasion,
  given,
}: { readonly built: AsBuiltComponent | null } & OnOccasion): PartialDate | null =>
  occasion === 'today' ? given.asOf : built && permitDate(built)
