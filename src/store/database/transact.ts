import type { Actor } from './actor.ts'
import type { Database, Tx } from './database.ts'

/**
 * Runs `work` in one transaction in the actor's name: committed when it resolves, undone when it throws.
 * Row-level security lets it see and change what that actor may, in that county, and nothing else.
 *
 * Called with the second argument that `work` is given, it joins the transaction under way instead of
 * opening another. A transaction that collides with another runs again: leave nothing outside the database
 * in `work` that must not happen twice.
 *
 * Throws OutsideFailure when the database is gone, starting, full or too slow.
 */
export const transact = <T>(
  database: Database,
  actor: Actor,
  work: (tx: Tx, within: Database) => Promise<T>,
): Promise<T> => database.perform(actor, work)

/**
 * For the few questions asked before anybody's county is known: whose token is this, which counties are
 * there. Tables of a county show no rows here; functions of the database that are made for it answer.
 */
export const withoutCounty = <T>(
  database: Database,
  work: (tx: Tx, within: Database) => Promise<T>,
): Promise<T> => database.perform('nobody', work)

/**
 * As the owner of the tables, past row-level security: to set up counties, organizations and tokens from
 * the command line, and to sweep away in all of them what has grown old. Never in answer to a request.
 */
export const administer = <T>(
  database: Database,
  work: (tx: Tx, within: Database) => Promise<T>,
): Promise<T> => database.perform('owner', work)
