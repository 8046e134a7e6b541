import type { Tx } from './database/database.ts'

export const JOB_STATES = ['waiting', 'running', 'done', 'failed'] as const

/** Long work as whoever asked for it sees it. */
export type Job = {
  readonly id: string
  readonly kind: string
  readonly state: (typeof JOB_STATES)[number]
  readonly done: number
  /** Null while it is not known. */
  readonly total: number | null
  readonly says: string | null
  readonly result: unknown
  readonly requestedAt: Date
  readonly changedAt: Date
}

export const jobById = (tx: Tx, county: string, id: string): Promise<Job | undefined> =>
  tx
    .selectFrom('job')
    .select([
      'id',
      'kind',
      'state',
      'done',
      'total',
      'says',
      'result',
      'requested_at as requestedAt',
      'changed_at as changedAt',
    ])
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
