import { sql } from 'kysely'
import type { Tally } from '../reading/assemble/own-shares.ts'
import type { Witness, Witnessed } from '../reading/family/witness.ts'
import type { Tx } from './database/database.ts'

/** What confirmed permits say of forms in force and of confidences. Written once for each; worked out again, it is the same. */

export async function keepWitnesses(
  tx: Tx,
  county: string,
  of: { readonly transcription: string; readonly permit: number; readonly form: string },
  said: readonly Witness[],
): Promise<void> {
  if (said.length === 0) return
  await tx
    .insertInto('form_witness')
    .values(said.map(({ ask, kind, agrees }) => ({ county, ...of, ask, kind: kind ?? '', agrees })))
    .onConflict((conflict) => conflict.doNothing())
    .execute()
}

/** Of each form, how often the places of its fields agreed and did not. */
export async function witnessedBy(
  tx: Tx,
  county: string,
  form?: string,
): Promise<ReadonlyMap<string, readonly Witnessed[]>> {
  let query = tx
    .selectFrom('form_witness')
    .select((eb) => [
      'form',
      'ask',
      'kind',
      eb.fn.countAll<string>().filterWhere('agrees', '=', true).as('agreed'),
      eb.fn.countAll<string>().filterWhere('agrees', '=', false).as('contradicted'),
    ])
    .where('county', '=', county)
  if (form !== undefined) query = query.where('form', '=', form)
  const rows = await query.groupBy(['form', 'ask', 'kind']).orderBy('ask').orderBy('kind').execute()
  const told = rows.map(({ form: id, ask, kind, agreed, contradicted }) => ({
    form: id,
    ask: ask as Witnessed['ask'],
    kind: (kind === '' ? null : kind) as Witnessed['kind'],
    agreed: Number(agreed),
    contradicted: Number(contradicted),
  }))
  return new Map([...Map.groupBy(told, (one) => one.form)])
}

/** Papers change, and so do readers: older confirmations than these say nothing of the next paper. */
const MOST_TALLIED = 1_000

export async function keepTallies(
  tx: Tx,
  county: string,
  transcription: string,
  tallies: readonly Tally[],
): Promise<void> {
  if (tallies.length === 0) return
  await tx
    .insertInto('reading_tally')
    .values(tallies.map((tally) => ({ county, transcription, ...tally })))
    .onConflict((conflict) => conflict.doNothing())
    .execute()
}

/** The county's tallies, of its last confirmations together. */
export async function talliesOf(tx: Tx, county: string): Promise<readonly Tally[]> {
  const { rows } = await sql<Tally>`
    select witness, step, ask, sum(confirmed)::int as confirmed, sum(changed)::int as changed
    from reading_tally
    where county = ${county} and transcription >= coalesce(
      (select id from transcription where county = ${county} order by id desc offset ${MOST_TALLIED} limit 1),
      '00000000-0000-0000-0000-000000000000'::uuid)
    group by witness, step, ask order by witness, step, ask`.execute(tx)
  return rows
}
