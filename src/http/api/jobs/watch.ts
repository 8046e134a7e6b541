import { setTimeout as wait } from 'node:timers/promises'
import type { Job } from '../../../store/jobs.ts'

const LOOK_EVERY_MS = 400
/** A line now and then keeps what lies between from closing a connection on which nothing happens. */
const BREATHE_EVERY_MS = 15_000

/**
 * A job as server-sent events (HTML Living Standard, 9.2): as it is, then at each change, until it has ended or
 * nobody listens any more.
 */
export async function* watch(
  first: Job,
  read: () => Promise<Job>,
  written: (job: Job) => string,
  until: AbortSignal,
): AsyncGenerator<string> {
  let last = written(first)
  yield `retry: 2000\n\n${event(first, last)}`
  let breathed = performance.now()
  for (let job = first; job.state !== 'done' && job.state !== 'failed'; ) {
    if (!(await waited(LOOK_EVERY_MS, until))) return
    job = await read()
    const now = written(job)
    if (now !== last) {
      last = now
      yield event(job, now)
    } else if (performance.now() - breathed > BREATHE_EVERY_MS) yield ': still there\n\n'
    else continue
    breathed = performance.now()
  }
}

const event = ({ changedAt }: Job, data: string): string =>
  `event: job\nid: ${changedAt.getTime()}\ndata: ${data}\n\n`

/** False when it was called off. */
const waited = (ms: number, signal: AbortSignal): Promise<boolean> =>
  wait(ms, true, { signal }).catch(() => false)
