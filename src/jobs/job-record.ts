import { serviceIn } from '../store/database/actor.ts'
import type { Database } from '../store/database/database.ts'
import { transact } from '../store/database/transact.ts'
import type { Progress } from './queue.ts'

type Change = Partial<Progress> & {
  readonly state?: 'running' | 'done' | 'failed' | 'waiting'
  readonly result?: unknown
}

/** Writes how a job is doing where whoever asked for it can see. A job that has ended is never changed. */
export const noteJob = (
  database: Database,
  county: string,
  id: string,
  change: Change,
  now: Date,
): Promise<void> =>
  transact(database, serviceIn(county), async (tx) => {
    const { result, ...columns } = change
    await tx
      .updateTable('job')
      .set({
        ...columns,
        ...(result === undefined ? {} : { result: JSON.stringify(result) }),
        changed_at: now,
      })
      .where('county', '=', county)
      .where('id', '=', id)
      .where('state', 'not in', ['done', 'failed'])
      .execute()
  })

const THIN_OUT_MS = 250

/** A reporter that writes at most four times a second, and always the last. */
export function thinnedOut(write: (progress: Progress) => Promise<void>, clock: () => Date) {
  let last = Number.NEGATIVE_INFINITY
  let held: Progress | undefined
  const report = async (progress: Progress): Promise<void> => {
    held = progress
    // A clock that was set back keeps nobody waiting for its old time.
    if (Math.abs(clock().getTime() - last) < THIN_OUT_MS) return
    await flush()
  }
  const flush = async (): Promise<void> => {
    if (held === undefined) return
    const progress = held
    held = undefined
    last = clock().getTime()
    await write(progress)
  }
  return { report, flush }
}
