import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import { PgBoss } from 'pg-boss'
import { expect } from 'vitest'
import { openDatabase } from '../../src/store/database/database.ts'
import { enrolPeople, type People } from '../support/people.ts'

/** People, and empty parcels for each client to take the next of; a worker that is gone is noticed after ten seconds. */
export async function enrolled(
  url: string,
  parcels: number,
): Promise<{ readonly people: People; readonly numbers: Iterator<string> }> {
  const database = openDatabase({ url, maxConnections: 2, onTrouble: () => {} })
  const people = await enrolPeople(database)
  await database.close()
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  await client.query(
    `insert into parcel (county, id, number) select 'quillback', gen_random_uuid(), '07-' || to_char(i / 10000, 'FM0000') || '-' || to_char(i % 10000, 'FM0000')
     from generate_series(1, $1) i`,
    [parcels],
  )
  await client.query('update pgboss.queue set heartbeat_seconds = 10')
  await client.end()
  return { people, numbers: numbered(parcels) }
}

const four = (part: number): string => String(part).padStart(4, '0')

function* numbered(count: number): Generator<string, undefined> {
  for (let at = 1; at <= count; at++) yield `07-${four(Math.floor(at / 10_000))}-${four(at % 10_000)}`
}

/** Looks after the queue every second, as the service does every minute, until nothing is left in it. */
export async function untilJobsAreDone(url: string): Promise<void> {
  const boss = new PgBoss({
    connectionString: url,
    schema: 'pgboss',
    max: 2,
    migrate: false,
    superviseIntervalSeconds: 1,
    monitorIntervalSeconds: 1,
  })
  boss.on('error', () => {})
  await boss.start()
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await expect
      .poll(
        async () => {
          const { rows } = await client.query<{ n: number }>(
            `select count(*)::int as n from job where state in ('waiting', 'running')`,
          )
          return rows[0]!.n
        },
        { timeout: 120_000, interval: 500 },
      )
      .toBe(0)
    await wait(1_500)
  } finally {
    await client.end()
    await boss.stop({ graceful: false })
  }
}
