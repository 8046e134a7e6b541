import { OutsideFailure } from '../../base/outside-failure.ts'
import type { OpenDatabase } from './database.ts'

/** More is asked of the database than would be answered in time. */
export class Overloaded extends OutsideFailure {}

/** Transactions for each connection that may run or wait; whoever comes after that is told to come again. */
const FOR_EACH_CONNECTION = 8

/**
 * The database for those who can be told to come again (requests, not jobs): as soon as many transactions run or wait,
 * further ones throw Overloaded at once. Counted here, where they are begun: the pool's own count says how many wait
 * now, not how many have been let in together and are about to.
 */
export function turningAway(database: OpenDatabase): OpenDatabase {
  let inside = 0
  return {
    ...database,
    perform: async (asking, work) => {
      if (inside >= database.counts().most * FOR_EACH_CONNECTION)
        throw new Overloaded('The database has too much to do', { retryAfterSeconds: 5 })
      inside += 1
      try {
        return await database.perform(asking, work)
      } finally {
        inside -= 1
      }
    },
  }
}
