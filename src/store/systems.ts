import { sql } from 'kysely'
import { ownSystem, type System, type SystemOnParcel } from '../records/system.ts'
import type { Tx } from './database/database.ts'
import { lockParcels } from './many-parcels.ts'
import { parcelById } from './parcels.ts'

type Row = Pick<System, 'id' | 'parcel' | 'use' | 'label' | 'revision'> & {
  readonly parcels: readonly SystemOnParcel[]
}

async function said(tx: Tx, county: string, which: ReturnType<typeof sql>): Promise<readonly System[]> {
  const { rows } = await sql<Row>`
    select s.id, s.parcel, s.use, s.label, s.revision, coalesce(on_parcels.list, '[]') as parcels
    from system s
    left join lateral (
      select json_agg(json_build_object('parcel', x.parcel, 'number', p.number, 'serves', x.serves, 'liesOn', x.lies_on,
          'bedrooms', x.bedrooms, 'designFlowGpd', x.design_flow_gpd)
        order by x.parcel <> s.parcel, p.number) as list
      from system_parcel x join parcel p on p.county = x.county and p.id = x.parcel
      where x.county = s.county and x.system = s.id) on_parcels on true
    where s.county = ${county} and ${which}
    order by s.id`.execute(tx)
  return rows
}

/** A system by its id; a parcel's own by the parcel's. */
export async function systemById(tx: Tx, county: string, id: string): Promise<System | undefined> {
  const [row] = await said(tx, county, sql`s.id = ${id}`)
  if (row) return row
  const parcel = await parcelById(tx, county, id)
  return parcel && ownSystem(parcel)
}

/** Those that serve a parcel or lie on it: its own first, then in the order of their ids. */
export async function systemsOf(tx: Tx, county: string, parcel: string): Promise<readonly System[]> {
  const rows = await said(
    tx,
    county,
    sql`(s.id = ${parcel} or s.id in (
      select x.system from system_parcel x where x.county = ${county} and x.parcel = ${parcel}))`,
  )
  const own = rows.find(({ id }) => id === parcel)
  const others = rows.filter((it) => it !== own && isOn(it, parcel))
  if (own) return isOn(own, parcel) ? [own, ...others] : others
  const known = await parcelById(tx, county, parcel)
  return known ? [ownSystem(known), ...others] : others
}

const isOn = ({ parcels }: System, parcel: string): boolean => parcels.some((it) => it.parcel === parcel)

/** Those of these parcels that have more to them than one system of their own, or another one. */
export async function outOfTheOrdinary(
  tx: Tx,
  county: string,
  parcels: readonly string[],
): Promise<ReadonlySet<string>> {
  const { rows } = await sql<{ parcel: string }>`
    select id as parcel from system where county = ${county} and id = any (${[...parcels]}::uuid[])
    union select parcel from system_parcel where county = ${county} and parcel = any (${[...parcels]}::uuid[])`.execute(
    tx,
  )
  return new Set(rows.map(({ parcel }) => parcel))
}

/** Parcels and systems that hang together: what is found in one of the systems bears on the status of each parcel. */
export type HangingTogether = { readonly parcels: readonly string[]; readonly systems: readonly System[] }

async function hangingTogether(tx: Tx, county: string, from: readonly string[]): Promise<HangingTogether> {
  const parcels = new Set<string>()
  const systems = new Map<string, System>()
  const waiting = [...from]
  for (let parcel = waiting.pop(); parcel !== undefined; parcel = waiting.pop()) {
    if (parcels.has(parcel)) continue
    parcels.add(parcel)
    for (const system of await systemsOf(tx, county, parcel)) {
      systems.set(system.id, system)
      waiting.push(...system.parcels.map((it) => it.parcel))
    }
  }
  return { parcels: [...parcels].sort(), systems: [...systems.values()] }
}

/** Those that hang together with these parcels, all held until the transaction ends, in the order in which everybody locks. */
export async function lockTogether(
  tx: Tx,
  county: string,
  from: readonly string[],
): Promise<HangingTogether> {
  let known = await hangingTogether(tx, county, from)
  for (;;) {
    await lockParcels(tx, county, known.parcels)
    const now = await hangingTogether(tx, county, from)
    if (now.parcels.every((parcel) => known.parcels.includes(parcel))) return now
    known = now
  }
}

/** A system as a reviewer says it is, with the reason; its revision is counted up by the caller. */
export async function writeSystem(
  tx: Tx,
  county: string,
  system: System,
  made: { readonly by: string; readonly at: Date; readonly reason: string },
): Promise<void> {
  const { id, parcel, use, label, revision, parcels } = system
  await tx
    .insertInto('system')
    .values({ county, id, parcel, use, label, revision, created_at: made.at })
    .onConflict((conflict) => conflict.columns(['county', 'id']).doUpdateSet({ use, label, revision }))
    .execute()
  await tx.deleteFrom('system_parcel').where('county', '=', county).where('system', '=', id).execute()
  if (parcels.length > 0) {
    await tx
      .insertInto('system_parcel')
      .values(
        parcels.map((it) => ({
          county,
          system: id,
          parcel: it.parcel,
          serves: it.serves,
          lies_on: it.liesOn,
          bedrooms: it.bedrooms,
          design_flow_gpd: it.designFlowGpd,
        })),
      )
      .execute()
  }
  await tx
    .insertInto('system_change')
    .values({
      county,
      system: id,
      revision,
      body: JSON.stringify({ use, label, parcels } satisfies SystemSaid),
      reason: made.reason,
      changed_by: made.by,
      changed_at: made.at,
    })
    .execute()
}

/** What a revision says. */
export type SystemSaid = Pick<System, 'use' | 'label' | 'parcels'>

export type SystemChange = SystemSaid & {
  readonly revision: number
  readonly reason: string
  readonly changedBy: string
  readonly changedAt: Date
}

/** Every revision, the newest first; a reviewer's to see. */
export async function changesOfSystem(
  tx: Tx,
  county: string,
  system: string,
): Promise<readonly SystemChange[]> {
  const rows = await tx
    .selectFrom('system_change')
    .select(['revision', 'body', 'reason', 'changed_by as changedBy', 'changed_at as changedAt'])
    .where('county', '=', county)
    .where('system', '=', system)
    .orderBy('revision', 'desc')
    .execute()
  return rows.map(({ body, ...row }) => ({ ...row, ...(body as SystemSaid) }))
}

export type FiledInSystem = { readonly permits: number; readonly findings: number }

/** What of a system is in the file of one parcel: what the asker may see of it. */
export async function filedInSystem(
  tx: Tx,
  county: string,
  system: string,
  parcel: string,
): Promise<FiledInSystem> {
  const { rows } = await sql<FiledInSystem>`
    select (select count(*)::integer from permit where county = ${county} and system = ${system} and parcel = ${parcel})
        as permits,
      (select count(*)::integer from findings where county = ${county} and system = ${system} and parcel = ${parcel})
        as findings`.execute(tx)
  return rows[0]!
}
