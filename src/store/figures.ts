import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

export type FigureName =
  | 'jobs'
  | 'oldest job'
  | 'documents'
  | 'deliveries'
  | 'audit entries'
  | 'originals'
  | 'originals looked through'
  | 'audit breaks'
  | 'audit noting'

/** A count over all counties; of the oldest job that waits, its age in seconds. */
export type Figure = { readonly figure: FigureName; readonly state: string; readonly value: number }

/** What the service's work comes to. Asked before any county is known; tells nothing of what is in one. */
export const readFigures = async (tx: Tx): Promise<readonly Figure[]> =>
  (
    await sql<Figure>`
    select figure, state, value from service_figures()
    union all select figure, state, value from upkeep_figures()`.execute(tx)
  ).rows
