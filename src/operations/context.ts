import type { Originals } from '../files/originals.ts'
import type { JobQueue } from '../jobs/queue.ts'
import type { Letters } from '../letters/letters.ts'
import type { RuleBook } from '../rules/book.ts'
import type { Database } from '../store/database/database.ts'
import type { Quotas } from './quotas.ts'

/** What operations need of the world outside; they take everything else as arguments. */
export type OperationContext = {
  /** Opens transactions by `transact(context.database, actor, ...)`; joins one that is already open. */
  readonly database: Database
  readonly clock: () => Date
  /** A new id, UUID version 7: ids made later sort later. */
  readonly newId: () => string
  readonly files: Originals
  readonly jobs: JobQueue
  /** Prints and seals letters. */
  readonly letters: Letters
  /** Every rule pack, as it is now. */
  readonly book: RuleBook
  /** What one organization may have or use; the usual where nothing is said. */
  readonly quotas?: Quotas
}
