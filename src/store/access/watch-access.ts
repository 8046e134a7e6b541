import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'

/** Hears of every change to who may come in, from whichever process made it. */
export type AccessWatch = {
  /** Whether a change would be heard of now: while it would not, nobody may be remembered. */
  readonly hears: () => boolean
  /** Called at each change, and when hearing begins again. */
  readonly onChange: (work: () => void) => void
  readonly close: () => Promise<void>
}

type WatchOptions = {
  readonly url: string
  readonly onTrouble: (fault: Error) => void
}

const CHANNEL = 'asfound_access'
const AGAIN_MS = 1_000

/** Listens on a connection of its own, and connects again when that is lost. */
export function watchAccess({ url, onTrouble }: WatchOptions): AccessWatch {
  const work: (() => void)[] = []
  const stop = new AbortController()
  const stopped = new Promise<void>((resolve) =>
    stop.signal.addEventListener('abort', () => resolve(), { once: true }),
  )
  let hearing = false
  const tell = () => {
    for (const each of work) each()
  }

  const listening = async (): Promise<void> => {
    const client = new pg.Client({
      connectionString: url,
      application_name: 'asfound access',
      keepAlive: true,
      connectionTimeoutMillis: 5_000,
    })
    const over = new Promise<void>((resolve) => {
      client.once('end', () => resolve())
      client.on('error', (fault) => {
        hearing = false
        onTrouble(fault)
        resolve()
      })
    })
    client.on('notification', tell)
    try {
      const began = client.connect().then(() => client.query(`listen ${CHANNEL}`))
      // A client that is ended while it connects says so to nobody.
      await Promise.race([began, stopped])
      if (stop.signal.aborted) return
      // What changed while nobody listened was not heard of.
      tell()
      hearing = true
      await Promise.race([over, stopped])
    } finally {
      hearing = false
      await Promise.race([client.end().catch(() => {}), wait(AGAIN_MS, undefined, { ref: false })])
    }
  }

  const going = (async () => {
    while (!stop.signal.aborted) {
      await listening().catch((fault: Error) => {
        if (!stop.signal.aborted) onTrouble(fault)
      })
      if (!stop.signal.aborted) await wait(AGAIN_MS, undefined, { signal: stop.signal }).catch(() => {})
    }
  })()

  return {
    hears: () => hearing,
    onChange: (each) => void work.push(each),
    close: async () => {
      stop.abort()
      await going
    },
  }
}
