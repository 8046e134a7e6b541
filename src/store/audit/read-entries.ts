import type { ClientBase } from 'pg'
import type { AuditEntry } from './entry.ts'
import type { Head } from './head.ts'

export type HashedEntry = { readonly entry: AuditEntry; readonly hash: string }

const PAGE = 5_000

/** Every county that has a chain, in order; `*` for the service's own. */
export async function chainsIn(client: ClientBase): Promise<readonly string[]> {
  const { rows } = await client.query<{ county: string }>('select distinct county from audit')
  return rows.map(({ county }) => county).sort()
}

/** Where each chain ends. */
export async function lastEntries(client: ClientBase): Promise<readonly Head[]> {
  const { rows } = await client.query<{ county: string; number: string; hash: string }>(
    'select distinct on (county) county, number, hash from audit order by county, number desc',
  )
  return rows.map(({ number, ...head }) => ({ ...head, number: Number(number) }))
}

/** A chain from its first entry to its last, a page at a time. */
export async function* readChain(client: ClientBase, county: string): AsyncGenerator<HashedEntry> {
  for (let after = '0'; ; ) {
    const { rows } = await client.query<Row>(
      `select number, to_char(at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') as at, act, kind, record, account,
         organization, role, before_hash, after_hash, hash
       from audit where county = $1 and number > $2 order by number limit ${PAGE}`,
      [county, after],
    )
    for (const { hash, number, before_hash: beforeHash, after_hash: afterHash, ...rest } of rows) {
      yield { entry: { county, number: Number(number), ...rest, beforeHash, afterHash }, hash }
    }
    const last = rows.at(-1)
    if (last === undefined) return
    after = String(last.number)
  }
}

type Row = Omit<AuditEntry, 'county' | 'number' | 'beforeHash' | 'afterHash'> & {
  /** bigint: text by pg's own reading, a number by the service's. */
  readonly number: string | number
  readonly before_hash: string | null
  readonly after_hash: string | null
  readonly hash: string
}
