import { setTimeout as wait } from 'node:timers/promises'
import { Gauge, type Registry } from 'prom-client'
import type { Originals } from '../../files/originals.ts'
import type { OpenDatabase } from '../../store/database/database.ts'
import { withoutCounty } from '../../store/database/transact.ts'
import { type Figure, type FigureName, readFigures } from '../../store/figures.ts'

/** Whoever watches gives up after a few seconds, and would then see nothing at all. */
const PATIENCE_MS = 3_000
/** However many watch, and however many figures one of them asks for, the database is asked once in this time. */
const FRESH_MS = 2_000

const STATES: Readonly<Record<FigureName, readonly string[]>> = {
  jobs: ['waiting', 'running', 'failed'],
  'oldest job': ['waiting'],
  documents: ['received', 'reading', 'proposed', 'failed'],
  deliveries: ['waiting', 'dead'],
  'audit entries': ['kept'],
  originals: ['damaged', 'missing'],
  'originals looked through': ['ago'],
  'audit breaks': ['known'],
  'audit noting': ['ago', 'faults'],
}

/** The work behind the answers, as the database and the disk have it. What can't be had is left out, and that is told. */
export function watchWork(registry: Registry, database: OpenDatabase, files: Originals): void {
  const figures = askedSeldom(() => withoutCounty(database, readFigures))
  const registers = [registry]

  function gauge(figure: FigureName, name: string, help: string, labeled = true): void {
    new Gauge({
      name,
      help,
      labelNames: labeled ? ['state'] : [],
      registers,
      async collect() {
        const found = await figures()
        for (const state of STATES[figure]) {
          const labels = labeled ? { state } : {}
          const value = found?.find((it) => it.figure === figure && it.state === state)?.value
          // What never was is no moment ago.
          if (found === undefined || (value === undefined && state === 'ago')) this.remove(labels)
          else this.set(labels, value ?? 0)
        }
      },
    })
  }
  gauge('jobs', 'asfound_jobs', 'Jobs waiting, running, and failed at every try')
  gauge('oldest job', 'asfound_job_oldest_waiting_seconds', 'How long the oldest job has waited', false)
  gauge('documents', 'asfound_documents', 'Documents not yet read, being read, to be confirmed, and failed')
  gauge('deliveries', 'asfound_deliveries', 'Webhook messages waiting, and failed for good')
  gauge('originals', 'asfound_originals_at_fault', 'Originals that changed, and originals that are missing')
  gauge(
    'originals looked through',
    'asfound_originals_looked_through_seconds',
    'How long ago every original was last checked',
    false,
  )
  gauge(
    'audit breaks',
    'asfound_audit_known_breaks',
    'Audit faults already known when the backup was restored',
    false,
  )
  gauge(
    'audit noting',
    'asfound_audit_noting',
    'Seconds since the ends of the audit chains were noted outside, and differences from the last note',
  )
  gauge('audit entries', 'asfound_audit_entries', 'Sum of the last entry numbers of the audit chains', false)
  new Gauge({
    name: 'asfound_database_up',
    help: '1 when the database reported the work figures, 0 when it did not; then they are left out',
    registers,
    async collect() {
      this.set((await figures()) === undefined ? 0 : 1)
    },
  })
  new Gauge({
    name: 'asfound_disk_bytes',
    help: 'The disk of the originals: free for this process, and total',
    labelNames: ['state'],
    registers,
    async collect() {
      const space = await files.space().catch(() => undefined)
      if (space === undefined) return this.reset()
      this.set({ state: 'free' }, space.free)
      this.set({ state: 'total' }, space.total)
    },
  })
}

/** Undefined where no answer comes in time. A question that still hangs is not asked again beside itself. */
function askedSeldom(ask: () => Promise<readonly Figure[]>): () => Promise<readonly Figure[] | undefined> {
  let answer: Promise<readonly Figure[] | undefined> | undefined
  let staleAt = 0
  return () => {
    if (answer === undefined || performance.now() > staleAt) {
      const asking = ask().catch(() => undefined)
      staleAt = Number.POSITIVE_INFINITY
      void asking.then(() => {
        staleAt = performance.now() + FRESH_MS
      })
      answer = asking
    }
    return Promise.race([answer, wait(PATIENCE_MS, undefined, { ref: false })])
  }
}
