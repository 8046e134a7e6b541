import type { PlainDate } from '../base/plain-date.ts'
import type { SaidOnce } from '../base/say-once.ts'
import { type Answer, answerOf, keptForm } from '../reconcile/kept.ts'
import type { SystemGiven } from '../reconcile/system-given.ts'
import type { Tx } from './database/database.ts'
import { hashOf } from './hash.ts'
import { ofSystem } from './of-system.ts'

/** What brought a reconciliation about. */
export const OCCASIONS = [
  'permit-entered',
  'permit-corrected',
  'permit-transcribed',
  'permit-refiled',
  'findings-submitted',
  'findings-amended',
  'record-corrected',
  'time-passed',
  'asked-for',
  'rules-changed',
  'engine-changed',
  'system-changed',
  'imported',
] as const
export type Occasion = (typeof OCCASIONS)[number]

/** Names everything that a reconciliation was computed from, closely enough to gather it all again. */
export type InputsNamed = {
  readonly county: string
  readonly place: string
  readonly asOf: PlainDate
  readonly permits: readonly { readonly id: string; readonly revision: number; readonly hash: string }[]
  readonly corrections: readonly { readonly decision: string; readonly hash: string }[]
  readonly findings: { readonly id: string; readonly hash: string } | null
  readonly ruleBook: string
  /** Where there is more to it than a parcel's own system. */
  readonly system?: SystemGiven
}

/** A reconciliation as it was made: never changed. */
export type StoredReconciliation = {
  readonly id: string
  /** In whose file the system's papers lie. */
  readonly parcel: string
  readonly system: string
  readonly findings: string | null
  readonly organization: string | null
  readonly inputs: InputsNamed
  readonly inputHash: string
  readonly engine: string
  readonly result: Answer
  readonly resultHash: string
  readonly occasion: Occasion
  readonly madeAt: Date
}

const select = (tx: Tx, county: string) =>
  tx
    .selectFrom('reconciliation')
    .select([
      'id',
      'parcel',
      'system',
      'findings',
      'organization',
      'inputs',
      'input_hash as inputHash',
      'engine',
      'result',
      'result_hash as resultHash',
      'occasion',
      'made_at as madeAt',
    ])
    .where('county', '=', county)

type Row = Omit<StoredReconciliation, 'inputs' | 'result' | 'occasion'> & {
  readonly inputs: unknown
  readonly result: unknown
  readonly occasion: string
}
const asStored = (row: Row): StoredReconciliation => ({
  ...row,
  inputs: row.inputs as InputsNamed,
  result: answerOf(row.result as SaidOnce),
  occasion: row.occasion as Occasion,
})

export async function reconciliationById(
  tx: Tx,
  county: string,
  id: string,
): Promise<StoredReconciliation | undefined> {
  const row = await select(tx, county).where('id', '=', id).executeTakeFirst()
  return row && asStored(row)
}

/** The newest of a system that the asker may see. */
export async function newestReconciliation(
  tx: Tx,
  county: string,
  system: string,
): Promise<StoredReconciliation | undefined> {
  const row = await select(tx, county)
    .where('system', '=', system)
    .orderBy('made_at', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst()
  return row && asStored(row)
}

/** What a list tells of each. */
export type ReconciliationInList = Pick<
  StoredReconciliation,
  'id' | 'parcel' | 'system' | 'findings' | 'occasion' | 'madeAt' | 'resultHash' | 'engine'
>

/** Where a page of the list ended. */
export type ReconciliationKey = { readonly madeAt: Date; readonly id: string }

/** Newest first, those before `before`. */
export async function reconciliationsOf(
  tx: Tx,
  county: string,
  system: string,
  before: ReconciliationKey | undefined,
  most: number,
): Promise<readonly ReconciliationInList[]> {
  let query = tx
    .selectFrom('reconciliation')
    .select([
      'id',
      'parcel',
      'system',
      'findings',
      'occasion',
      'made_at as madeAt',
      'result_hash as resultHash',
      'engine',
    ])
    .where('county', '=', county)
    .where('system', '=', system)
  if (before) {
    query = query.where((eb) => eb(eb.refTuple('made_at', 'id'), '<', eb.tuple(before.madeAt, before.id)))
  }
  const rows = await query.orderBy('made_at', 'desc').orderBy('id', 'desc').limit(most).execute()
  return rows.map((row) => ({ ...row, occasion: row.occasion as Occasion }))
}

type New = Omit<StoredReconciliation, 'inputHash' | 'resultHash'> & { readonly asBuiltOn: PlainDate }

/** Stores it and returns it with its hashes. */
export async function insertReconciliation(tx: Tx, county: string, made: New): Promise<StoredReconciliation> {
  const { asBuiltOn, ...rest } = made
  const kept = keptForm(made.result)
  const stored = { ...rest, inputHash: hashOf(made.inputs), resultHash: hashOf(kept) }
  await tx
    .insertInto('reconciliation')
    .values({
      county,
      id: stored.id,
      parcel: stored.parcel,
      of_system: ofSystem(stored),
      findings: stored.findings,
      organization: stored.organization,
      as_built_on: asBuiltOn,
      inputs: JSON.stringify(stored.inputs),
      input_hash: stored.inputHash,
      engine: stored.engine,
      result: JSON.stringify(kept),
      result_hash: stored.resultHash,
      occasion: stored.occasion,
      made_at: stored.madeAt,
    })
    .execute()
  return stored
}
