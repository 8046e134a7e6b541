import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import pg from 'pg'
import { verifyAudit } from '../../src/store/audit/verify-audit.ts'
import type { Acknowledged } from './clients.ts'

type Expected = {
  readonly acknowledged: readonly Acknowledged[]
  readonly url: string
  readonly dataFolder: string
}

/** What is not as it should be once all is quiet: each a sentence. Nothing is lost when there is none. */
export async function account({ acknowledged, url, dataFolder }: Expected): Promise<readonly string[]> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query('begin isolation level repeatable read read only')
    return [
      ...(await lostOrDoubled(client, acknowledged)),
      ...(await oddities(client)),
      ...(await unread(client)),
      ...(await filesThatAreNot(client, dataFolder)),
      ...(await verifyAudit(client)).faults,
    ]
  } finally {
    await client.end()
  }
}

/** Where each kind of thing must be found, exactly once. */
const ONCE: { readonly [W in Acknowledged['what']]: string } = {
  permit: `select count(*) from permit p join permit_revision r on r.county = p.county and r.permit = p.id
    join event e on e.county = p.county and e.subject = p.id and e.kind = 'permit-entered'
    where p.number = $2 and p.id = $1 and (select count(*) from permit q where q.number = $2) = 1`,
  draft: `select count(*) from findings where id = $1 and record ->> 'notes' = $2
    and (select count(*) from findings f where f.record ->> 'notes' = $2) = 1`,
  submission: `select count(*) from findings f join event e on e.county = f.county and e.subject = f.id
    and e.kind = 'findings-submitted' where f.id = $1 and f.state = 'submitted' and f.record ->> 'notes' = $2`,
  decision: `select count(*) from decision d where d.id = $1 and d.discrepancy = $2
    and (select count(*) from decision e where e.discrepancy = $2) = 1`,
  document: `select count(*) from document where id = $1 and content_hash = $2
    and (select count(*) from document d where d.content_hash = $2) = 1`,
  letter: `select count(*) from letter where id = $1 and number = $2`,
}

async function lostOrDoubled(
  client: pg.Client,
  acknowledged: readonly Acknowledged[],
): Promise<readonly string[]> {
  const wrong: string[] = []
  for (const it of acknowledged) {
    const { rows } = await client.query<{ count: string }>(ONCE[it.what], [it.id, nameOf(it)])
    if (rows[0]?.count !== '1')
      wrong.push(`${it.what} ${it.id} was acknowledged and is there ${rows[0]?.count} times`)
  }
  return wrong
}

function nameOf(it: Acknowledged): string {
  if (it.what === 'permit' || it.what === 'letter') return it.number
  if (it.what === 'decision') return it.discrepancy
  return it.what === 'document' ? it.hash : it.remarks
}

/** Things that must hold of all that is there, acknowledged or not. */
const NONE: Readonly<Record<string, string>> = {
  'a number that was given to two permits': `select number as it from permit where number like 'K-%' group by number having count(*) > 1`,
  'an inspection that was taken in twice': `select record ->> 'notes' as it from findings where record ->> 'notes' like 'inspection %'
    group by 1 having count(*) > 1`,
  'a permit without the revision that it says': `select p.id as it from permit p where not exists (select from permit_revision r
    where r.county = p.county and r.permit = p.id and r.revision = p.revision and r.record = p.record)`,
  'a parcel whose newest reconciliation has not seen its whole file': `
    select p.number as it from parcel p
    join lateral (select inputs from reconciliation r where r.county = p.county and r.parcel = p.id
      order by made_at desc, id desc limit 1) newest on true
    where (select count(*) from permit t where t.county = p.county and t.parcel = p.id)
        <> jsonb_array_length(newest.inputs -> 'permits')
      or exists (select from findings f where f.county = p.county and f.parcel = p.id and f.state = 'submitted'
        and newest.inputs -> 'findings' ->> 'id' is distinct from f.id::text)`,
  'a parcel with a file and no status': `select p.number as it from parcel p where not exists (select from parcel_status s
    where s.county = p.county and s.parcel = p.id) and exists (select from permit t where t.parcel = p.id)`,
  'a decided discrepancy without its decision': `select id as it from discrepancy d where d.decision is not null
    and not exists (select from decision e where e.county = d.county and e.id = d.decision)`,
  'a letter number that was left out': `select county || ' ' || year as it from letter_counter c
    where last <> (select count(*) from letter l where l.county = c.county and extract(year from l.issued_on) = c.year)`,
  'a job that did not run to its end': `select kind || ' ' || id || ' is ' || state as it from job where state <> 'done'`,
  'a job that the queue still holds': `select name || ' ' || id || ' is ' || state as it from pgboss.job
    where state in ('created', 'retry', 'active', 'failed') and name <> '__pgboss__send-it'`,
}

async function oddities(client: pg.Client): Promise<readonly string[]> {
  const found: string[] = []
  for (const [what, query] of Object.entries(NONE)) {
    const { rows } = await client.query<{ it: string }>(query)
    found.push(...rows.map(({ it }) => `${what}: ${it}`))
  }
  return found
}

async function unread(client: pg.Client): Promise<readonly string[]> {
  const { rows } = await client.query<{ it: string }>(
    `select id || ' is ' || state || coalesce(': ' || reason, '') as it from document where state <> 'proposed'`,
  )
  return rows.map(({ it }) => `a paper that was not read: ${it}`)
}

/** Every original that a row names is there to the last byte, and nothing lies under a name that is not its own. */
async function filesThatAreNot(client: pg.Client, dataFolder: string): Promise<readonly string[]> {
  const folder = path.join(dataFolder, 'originals')
  const names = (await readdir(folder, { recursive: true })).filter((name) => /[0-9a-f]{64}$/.test(name))
  const there = new Set<string>()
  const wrong: string[] = []
  for (const name of names) {
    const hash = createHash('sha256')
      .update(await readFile(path.join(folder, name)))
      .digest('hex')
    if (path.basename(name) === hash) there.add(hash)
    else wrong.push(`half a file: ${name}`)
  }
  const { rows } = await client.query<{ hash: string }>(
    'select content_hash as hash from document union select pdf_sha256 from letter',
  )
  return [...wrong, ...rows.filter(({ hash }) => !there.has(hash)).map(({ hash }) => `no file: ${hash}`)]
}
