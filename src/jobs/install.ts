import { PgBoss } from 'pg-boss'
import { outsideIfGone } from '../store/database/database-fault.ts'
import { JOB_KINDS } from './kinds.ts'

export const QUEUE_SCHEMA = 'pgboss'
/** Where jobs go that failed every time they were tried. */
export const LOST = 'lost-jobs'
/** Any number of its own. */
const GRANT_LOCK = 7_032_651_906

/** A killed worker is noticed within 20 s, for it is looked for every 5; a failed job is tried 5 times more, after 2 s, 4 s, 8 s and so on. */
const QUEUE = {
  retryLimit: 5,
  retryDelay: 2,
  retryBackoff: true,
  heartbeatSeconds: 15,
  expireInSeconds: 12 * 3600,
  deleteAfterSeconds: 7 * 24 * 3600,
  notify: true,
  deadLetter: LOST,
}

/** Installs the queue in a migrated database, or brings it up to date; any number of processes may at once. */
export async function installQueue(url: string): Promise<void> {
  const boss = new PgBoss({
    connectionString: url,
    schema: QUEUE_SCHEMA,
    max: 2,
    supervise: false,
    schedule: false,
  })
  boss.on('error', () => {})
  try {
    await boss.start()
    await createQueues(boss)
  } catch (fault) {
    throw outsideIfGone(fault)
  } finally {
    await boss.stop({ graceful: false })
  }
}

async function createQueues(boss: PgBoss): Promise<void> {
  await boss.createQueue(LOST, { retryLimit: 100, retryBackoff: true, retryDelayMax: 600 })
  for (const kind of JOB_KINDS) {
    await boss.createQueue(kind, QUEUE)
    await boss.updateQueue(kind, QUEUE)
  }
  // Jobs are left in transactions of the service's own role. One statement, so one transaction: processes that
  // start together would otherwise change the same catalog rows at once, which PostgreSQL refuses.
  await boss.getDb().executeSql(`
    select pg_advisory_xact_lock(${GRANT_LOCK});
    grant usage on schema ${QUEUE_SCHEMA} to asfound_service;
    grant select, insert on all tables in schema ${QUEUE_SCHEMA} to asfound_service;
    grant execute on all functions in schema ${QUEUE_SCHEMA} to asfound_service;`)
}
