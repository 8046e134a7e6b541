import { type AccountListed, accountsOf } from '../../store/access/people.ts'
import { memberOf } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Answer } from '../refusal.ts'
import type { Asker } from './asker.ts'
import type { SignInContext } from './open-session.ts'
import { personAsked } from './person-asked.ts'

/** The accounts of the asker's organization, in the order they were made. */
export const listPeople = (context: SignInContext, asker: Asker): Promise<readonly AccountListed[]> =>
  transact(context.database, memberOf(asker), (tx) => accountsOf(tx, asker.organization))

export const readPerson = (
  context: SignInContext,
  asker: Asker,
  id: string,
): Promise<Answer<AccountListed>> =>
  transact(context.database, memberOf(asker), (tx) => personAsked(tx, asker, id))
