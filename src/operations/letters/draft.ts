import type { NonEmpty } from '../../base/non-empty.ts'
import type { PlainDate } from '../../base/plain-date.ts'
import type { LetterFrame } from '../../letters/content/frame.ts'
import type { LetterFacts } from '../../letters/facts.ts'
import type { Pictures } from '../../letters/press/sheet.ts'
import type { System } from '../../records/system.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import type { Parcel } from '../../store/parcels.ts'
import type { StoredReconciliation } from '../../store/reconciliations.ts'
import type { DatedStatus } from '../../store/statuses.ts'
import type { Language } from '../../words/language.ts'
import type { OperationContext } from '../context.ts'
import type { Answer } from '../refusal.ts'

/** What a letter of one kind will say, before it has a number. */
export type LetterDraft = {
  readonly asOf: PlainDate
  readonly reconciliation: Pick<StoredReconciliation, 'id' | 'resultHash'> | null
  readonly facts: LetterFacts
  /** From ample to tight. */
  readonly contents: (frame: LetterFrame) => NonEmpty<unknown>
  readonly mostPages: number | null
  readonly pictures?: Pictures
}

/** What there is to draft from: a transaction in the asker's name, in which nothing is seen that they may not see. */
export type Desk = {
  readonly tx: Tx
  readonly within: Database
  readonly context: OperationContext
  readonly actor: Person
  readonly parcel: Parcel
  /** All of the parcel's; a brief or a report speaks of one, which has to be named where there are several. */
  readonly systems: readonly System[]
  readonly system: System
  readonly status: DatedStatus
  readonly language: Language
}

export type Drafting = (desk: Desk) => Promise<Answer<LetterDraft>>
