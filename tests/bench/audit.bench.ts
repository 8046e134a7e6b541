/**
 * What the audit costs: events appended by ten writers at once, each in a transaction of its own that is on the disk
 * before it is acknowledged, in one county (one chain) and over fifty; beside the same with the watch switched off. And
 * the entries alone: many records in one transaction.
 */
import { randomUUID } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { sql } from 'kysely'
import { prepareDatabase } from '../../src/jobs/prepare-database.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { openDatabase } from '../../src/store/database/database.ts'
import { reachServer } from '../../src/store/database/server.ts'
import { administer, transact } from '../../src/store/database/transact.ts'
import { recordEvent } from '../../src/store/events.ts'

const ROUNDS = 3
const SECONDS = 3
const WRITERS = 10
const COUNTIES = 50
const MANY = 5_000

const dataFolder = await mkdtemp(path.join(os.tmpdir(), 'asfound-bench-'))
const server = await reachServer({ url: undefined, dataFolder, onTrouble: console.error })
await prepareDatabase(server.url)
const database = openDatabase({ url: server.url, maxConnections: WRITERS, onTrouble: () => {} })

const happened = () => ({
  id: randomUUID(),
  kind: 'bench',
  subjectKind: 'parcel' as const,
  subject: randomUUID(),
  parcel: null,
  afterHash: 'a'.repeat(64),
  body: { reason: 'So that there is something to hash.' },
  at: new Date(),
})

/** Transactions a second. */
async function appends(counties: number): Promise<number> {
  const end = performance.now() + SECONDS * 1_000
  let done = 0
  const write = async (writer: number) => {
    for (let at = writer; performance.now() < end; at += 7) {
      const actor = serviceIn(`county-${at % counties}`)
      await transact(database, actor, (tx) => recordEvent(tx, actor, happened()))
      done += 1
    }
  }
  await Promise.all(Array.from({ length: WRITERS }, (_, writer) => write(writer)))
  return done / SECONDS
}

/** Records a second, all in one transaction. */
async function bulk(): Promise<number> {
  const from = performance.now()
  await administer(database, (tx) =>
    sql`insert into event (county, id, kind, subject_kind, subject, role, body)
      select 'county-0', gen_random_uuid(), 'bench', 'parcel', gen_random_uuid(), 'service', '{"reason": "bulk"}'
      from generate_series(1, ${MANY}::integer)`.execute(tx),
  )
  return MANY / ((performance.now() - from) / 1_000)
}

const watch = (how: 'enable' | 'disable') =>
  administer(database, (tx) => sql`alter table event ${sql.raw(how)} trigger append_audit`.execute(tx))

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!

const measured: readonly (readonly [string, () => Promise<number>])[] = [
  ['transactions a second in one county', () => appends(1)],
  ['transactions a second over fifty counties', () => appends(COUNTIES)],
  ['records a second in one transaction', bulk],
]
try {
  for (const [what, measure] of measured) {
    const watched: number[] = []
    const unwatched: number[] = []
    for (let round = 0; round < ROUNDS; round++) {
      watched.push(await measure())
      await watch('disable')
      unwatched.push(await measure())
      await watch('enable')
    }
    const [ours, limit] = [median(watched), median(unwatched)]
    console.log(
      JSON.stringify({
        what: `audited ${what}`,
        value: Math.round(ours),
        limit: `unwatched: ${Math.round(limit)}`,
        ratio: Number((limit / ours).toFixed(2)),
      }),
    )
  }
} finally {
  await database.close()
  server.release()
  await wait(4_000)
  await rm(dataFolder, { recursive: true, force: true })
}
