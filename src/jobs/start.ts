import { fromKysely, PgBoss } from 'pg-boss'
import { OutsideFailure } from '../base/outside-failure.ts'
import type { Actor } from '../store/database/actor.ts'
import type { OpenDatabase } from '../store/database/database.ts'
import { outsideIfGone } from '../store/database/database-fault.ts'
import { noteJob, thinnedOut } from './job-record.ts'
import { JOB_KINDS, type JobKind, type JobKinds } from './kinds.ts'
import type { JobHandlers, JobQueue } from './queue.ts'

export type JobOptions = {
  readonly url: string
  readonly database: OpenDatabase
  readonly clock: () => Date
  readonly newId: () => string
  /** How many jobs of each kind this process runs side by side. */
  readonly atOnce: number
  readonly onTrouble: (fault: Error) => void
}

export type RunningJobs = JobQueue & {
  /** Begins to take jobs and run them; without it this process only leaves them. */
  readonly work: (handlers: JobHandlers) => Promise<void>
  /** Lets running jobs end, for at most so long; what has not ended by then comes again elsewhere. */
  readonly stop: (withinMs: number) => Promise<void>
}

type Left<K extends JobKind = JobKind> = { readonly actor: Actor; readonly data: JobKinds[K] }

const LOST = 'lost-jobs'
const SCHEMA = 'pgboss'
/** Any number of its own. */
const GRANT_LOCK = 7_032_651_906

/** A killed worker is noticed after 30 s; a failed job is tried 5 times more, after 2 s, 4 s, 8 s and so on. */
const QUEUE = {
  retryLimit: 5,
  retryDelay: 2,
  retryBackoff: true,
  heartbeatSeconds: 30,
  expireInSeconds: 12 * 3600,
  deleteAfterSeconds: 7 * 24 * 3600,
  notify: true,
  deadLetter: LOST,
}

/**
 * Opens the queue in the service's own database, installing it there when `install` says so (the process
 * that migrates). Jobs are left by `enqueue` in the caller's transaction.
 */
export async function openJobs(options: JobOptions, install: boolean): Promise<RunningJobs> {
  const { url, database, clock, newId, atOnce, onTrouble } = options
  const boss = new PgBoss({
    connectionString: url,
    schema: SCHEMA,
    max: Math.max(4, atOnce + 2),
    migrate: install,
    createSchema: install,
    useListenNotify: true,
    application_name: 'asfound jobs',
  })
  boss.on('error', onTrouble)
  try {
    await boss.start()
    if (install) await installQueues(boss)
  } catch (fault) {
    throw outsideIfGone(fault)
  }

  return {
    enqueue: async (tx, actor, kind, data) => {
      const id = newId()
      const { county, account, organisation } = actor
      await tx
        .insertInto('job')
        .values({
          county,
          id,
          kind,
          organisation,
          requested_by: account,
          state: 'waiting',
          total: null,
          says: null,
          requested_at: clock(),
          changed_at: clock(),
        })
        .execute()
      await boss.send(kind, { actor, data } satisfies Left, { id, db: fromKysely(tx) })
      return id
    },
    check: async () => {
      if (!(await boss.isInstalled().catch(() => false))) {
        throw new OutsideFailure('The job queue does not answer', { retryAfterSeconds: 5 })
      }
    },
    work: async (handlers) => {
      for (const kind of JOB_KINDS) await workOn(kind, handlers[kind] as Handler)
      await boss.work<Left, void, { includeMetadata: true }>(
        LOST,
        { includeMetadata: true },
        async (jobs) => {
          for (const { data, sourceId } of jobs) {
            const change = { state: 'failed', says: 'It failed every time it was tried.' } as const
            if (sourceId) await noteJob(database, data.actor.county, sourceId, change, clock())
          }
        },
      )
    },
    stop: (withinMs) => boss.stop({ graceful: true, timeout: withinMs }),
  }

  type Handler = (run: Parameters<JobHandlers[JobKind]>[0]) => Promise<unknown>

  async function workOn(kind: JobKind, handler: Handler): Promise<void> {
    await boss.work<Left>(kind, { localConcurrency: atOnce }, async ([job]) => {
      if (!job) return
      const { id, signal, data: left } = job
      const note = (change: Parameters<typeof noteJob>[3]) =>
        noteJob(database, left.actor.county, id, change, clock())
      const { report, flush } = thinnedOut(note, clock)
      await note({ state: 'running' })
      try {
        const result = await handler({ id, actor: left.actor, data: left.data, report, signal } as never)
        await flush()
        await note({ state: 'done', result: result ?? null })
      } catch (fault) {
        onTrouble(new Error(`job ${kind} ${id} failed`, { cause: fault }))
        await note({ state: 'waiting' })
        throw fault
      }
    })
  }
}

async function installQueues(boss: PgBoss): Promise<void> {
  await boss.createQueue(LOST, { retryLimit: 100, retryBackoff: true, retryDelayMax: 600 })
  for (const kind of JOB_KINDS) {
    await boss.createQueue(kind, QUEUE)
    await boss.updateQueue(kind, QUEUE)
  }
  // Jobs are left in transactions of the service's own role. One statement, so one transaction: processes that
  // start together would otherwise change the same catalogue rows at once, which PostgreSQL refuses.
  await boss.getDb().executeSql(`
    select pg_advisory_xact_lock(${GRANT_LOCK});
    grant usage on schema ${SCHEMA} to asfound_service;
    grant select, insert on all tables in schema ${SCHEMA} to asfound_service;
    grant execute on all functions in schema ${SCHEMA} to asfound_service;`)
}
