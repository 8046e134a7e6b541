import { fromKysely, PgBoss } from 'pg-boss'
import { OutsideFailure } from '../base/outside-failure.ts'
import { spanned, type Traces } from '../net/tracing/traces.ts'
import type { Actor } from '../store/database/actor.ts'
import type { OpenDatabase } from '../store/database/database.ts'
import { outsideIfGone } from '../store/database/database-fault.ts'
import { LOST, QUEUE_SCHEMA } from './install.ts'
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
  readonly traces?: Traces | undefined
}

export type RunningJobs = JobQueue & {
  /** Begins to take jobs and run them; without it this process only leaves them. */
  readonly work: (handlers: Partial<JobHandlers>) => Promise<void>
  /** Lets running jobs end, for at most so long; what has not ended by then comes again elsewhere. */
  readonly stop: (withinMs: number) => Promise<void>
}

type Left<K extends JobKind = JobKind> = { readonly actor: Actor; readonly data: JobKinds[K] }

/** New jobs are announced; those to be tried again are only found by looking, so look every two seconds. */
const POLLING = { notifyPollingIntervalSeconds: 2 } as const

/** How often it is looked whether somebody's job has gone silent. */
const LOOK_SECONDS = 5

/** Opens the queue of a prepared database. Jobs are left by `enqueue` in the caller's transaction. */
export async function openJobs(options: JobOptions): Promise<RunningJobs> {
  const { url, database, clock, newId, atOnce, onTrouble, traces } = options
  const boss = new PgBoss({
    connectionString: url,
    schema: QUEUE_SCHEMA,
    max: Math.max(4, atOnce + 2),
    migrate: false,
    createSchema: false,
    useListenNotify: true,
    superviseIntervalSeconds: LOOK_SECONDS,
    monitorIntervalSeconds: LOOK_SECONDS,
    application_name: 'asfound jobs',
  })
  boss.on('error', onTrouble)
  try {
    await boss.start()
  } catch (fault) {
    await boss.stop({ graceful: false }).catch(() => {})
    throw outsideIfGone(fault)
  }

  return {
    enqueue: async (tx, actor, kind, data) => {
      const id = newId()
      const { county, account, organization } = actor
      await tx
        .insertInto('job')
        .values({
          county,
          id,
          kind,
          organization,
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
      for (const kind of JOB_KINDS) {
        const handler = handlers[kind] as Handler | undefined
        if (handler) await workOn(kind, handler)
      }
      await boss.work<Left, void, { includeMetadata: true }>(
        LOST,
        { includeMetadata: true },
        async (jobs) => {
          for (const { data, sourceId } of jobs) {
            const change = { state: 'failed', says: 'It failed at every try.' } as const
            if (sourceId) await noteJob(database, data.actor.county, sourceId, change, clock())
          }
        },
      )
    },
    stop: (withinMs) => boss.stop({ graceful: true, timeout: withinMs }),
  }

  type Handler = (run: Parameters<JobHandlers[JobKind]>[0]) => Promise<unknown>

  async function workOn(kind: JobKind, handler: Handler): Promise<void> {
    await boss.work<Left>(kind, { ...POLLING, localConcurrency: atOnce }, async ([job]) => {
      if (!job) return
      const { id, signal, data: left } = job
      const note = (change: Parameters<typeof noteJob>[3]) =>
        noteJob(database, left.actor.county, id, change, clock())
      const { report, flush } = thinnedOut(note, clock)
      await note({ state: 'running' })
      try {
        const result = await spanned(traces, `job ${kind}`, { kind: 'consumer' }, () =>
          handler({ id, actor: left.actor, data: left.data, report, signal } as never),
        )
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
