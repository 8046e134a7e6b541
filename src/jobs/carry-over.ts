import type { ClientBase } from 'pg'
import { PgBoss } from 'pg-boss'
import { z } from 'zod'
import { LOST, QUEUE_SCHEMA } from './install.ts'

/** A job that is still to be done, as a backup carries it. */
export const pendingJob = z.strictObject({
  name: z.string(),
  id: z.uuid(),
  data: z.unknown(),
  startAfter: z.iso.datetime(),
})
export type PendingJob = z.output<typeof pendingJob>

/**
 * What waits or runs in the queue: jobs are done at least once, so one that runs is one to be done. Those that had failed
 * for good, with nobody told yet, are tried again under their own id.
 */
export async function pendingJobs(client: ClientBase): Promise<readonly PendingJob[]> {
  const { rows: there } = await client.query<{ there: boolean }>(
    'select to_regclass($1) is not null as there',
    [`${QUEUE_SCHEMA}.job`],
  )
  if (!there[0]?.there) return []
  const { rows } = await client.query<PendingJob>(
    `select case when name = $1 then source_name else name end as name, case when name = $1 then source_id else id end as id,
       data, to_char(start_after at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') as "startAfter"
     from ${QUEUE_SCHEMA}.job
     where state in ('created', 'retry', 'active') and (name <> $1 or source_id is not null)
     order by created_on, id`,
    [LOST],
  )
  return rows
}

/** Puts jobs into an installed queue, in the client's open transaction. */
export async function putJobsBack(
  url: string,
  client: ClientBase,
  jobs: readonly PendingJob[],
): Promise<void> {
  if (jobs.length === 0) return
  const boss = new PgBoss({
    connectionString: url,
    schema: QUEUE_SCHEMA,
    max: 2,
    supervise: false,
    schedule: false,
  })
  boss.on('error', () => {})
  const db = { executeSql: (text: string, values?: unknown[]) => client.query(text, values as unknown[]) }
  try {
    await boss.start()
    for (const { name, id, data, startAfter } of jobs)
      await boss.insert(name, [{ id, data: data as object, startAfter: new Date(startAfter) }], { db })
  } finally {
    await boss.stop({ graceful: false })
  }
}
