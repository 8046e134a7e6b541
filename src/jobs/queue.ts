import type { Actor } from '../store/database/actor.ts'
import type { Tx } from '../store/database/database.ts'
import type { JobKind, JobKinds } from './kinds.ts'

/** Where operations leave work for later. */
export type JobQueue = {
  /**
   * Leaves a job as part of the transaction: it exists when the transaction commits and never did when it is
   * undone. Returns the job's id, under which its progress can be read. Done at least once: after a crash
   * it may run again, so a handler must be able to.
   */
  readonly enqueue: <K extends JobKind>(tx: Tx, actor: Actor, kind: K, data: JobKinds[K]) => Promise<string>
  /** Throws OutsideFailure when jobs can't be left now. */
  readonly check: () => Promise<void>
}

/** How far a job is: `done` of `total` (null while unknown), and in words. */
export type Progress = { readonly done: number; readonly total: number | null; readonly says: string }

/** One run of a job, as its handler sees it. */
export type JobRun<K extends JobKind> = {
  readonly id: string
  /** Who left it: work in their name where they may, in the service's (`asService`) where it must. */
  readonly actor: Actor
  readonly data: JobKinds[K]
  /** Tells whoever watches; calls that come quickly are thinned out. */
  readonly report: (progress: Progress) => Promise<void>
  /** Aborted when the service stops or the job took too long: leave off, the job comes again. */
  readonly signal: AbortSignal
}

/** What a handler returns is kept as the job's result, as JSON. */
export type JobHandlers = {
  readonly [K in JobKind]: (run: JobRun<K>) => Promise<unknown>
}
