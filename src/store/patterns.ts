import { sql } from 'kysely'
import type { DiscrepancyKind } from '../reconcile/kinds.ts'
import type { Tx } from './database/database.ts'

/** How many of a group have what is looked for. */
export type GroupCount = { readonly name: string | null; readonly hits: number; readonly total: number }

/** Less was put in than the record or the code says. */
export const SHORTFALLS = [
  'capacity-below-record',
  'capacity-below-code',
  'absorption-below-code',
] as const satisfies readonly DiscrepancyKind[]
/** Work that nobody put on paper. */
export const UNRECORDED = [
  'line-replaced-without-permit',
  'component-not-on-record',
] as const satisfies readonly DiscrepancyKind[]

const INSPECTED = sql`
  select p.county, p.id, p.street_key from parcel p
  where p.county = asking_county() and exists (
    select from findings f where f.county = p.county and f.parcel = p.id and f.state = 'submitted')`

const raised = (kinds: readonly DiscrepancyKind[]) => sql`exists (
  select from discrepancy d where d.county = v.county and d.parcel = v.id and d.state <> 'vanished'
    and d.kind = any (${[...kinds]}::text[]))`

/** Inspected parcels by the decade of their first approved permit: at how many less was found than was put down or required. */
export async function shortfallsByDecade(tx: Tx): Promise<readonly GroupCount[]> {
  const { rows } = await sql<GroupCount>`
    select left(first, 3) || '0s' as name, count(*) filter (where hit) as hits,
      count(*) as total
    from (
      select (select min(t.approved_on) from permit t where t.county = v.county and t.parcel = v.id and t.standing is null) as first,
        ${raised(SHORTFALLS)} as hit
      from (${INSPECTED}) v) inspected
    where first is not null group by 1 order by 1`.execute(tx)
  return rows
}

/** Inspected parcels by street: at how many something was found that nobody put on paper. */
export async function unrecordedByStreet(tx: Tx): Promise<readonly GroupCount[]> {
  const { rows } = await sql<GroupCount>`
    select nullif(v.street_key, '') as name,
      count(*) filter (where ${raised(UNRECORDED)}) as hits,
      count(*) as total
    from (${INSPECTED}) v group by 1 order by 1`.execute(tx)
  return rows
}

/** Values read from papers by the form they stood on: how many the person who confirmed them had to type anew. */
export async function misreadsByForm(tx: Tx): Promise<readonly GroupCount[]> {
  const { rows } = await sql<GroupCount>`
    select coalesce(form.family, 'no taught form') as name,
      count(*) filter (where source.value ->> 'confidence' is null) as hits, count(*) as total
    from permit_revision r
    join transcription t on t.county = r.county and t.id = r.transcription
    join document d on d.county = t.county and d.id = t.document
    cross join lateral jsonb_each(r.record -> 'sources') as source
    cross join lateral (
      select proposal ->> 'family' as family from jsonb_array_elements(d.proposals) as proposal
      where proposal -> 'pages' @> (source.value -> 'page') limit 1) as form
    where r.county = asking_county() and r.revision = 1 and source.value ->> 'kind' = 'document'
    group by 1 order by 1`.execute(tx)
  return rows
}
