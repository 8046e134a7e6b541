import { ok } from '../../base/result.ts'
import { type AccountListed, accountById } from '../../store/access/people.ts'
import type { Tx } from '../../store/database/database.ts'
import { type Answer, notFound } from '../refusal.ts'
import type { Asker } from './asker.ts'

/** Of the asker's own organization; whoever does not look after it sees themself alone. `own` means themself. */
export async function personAsked(tx: Tx, asker: Asker, asked: string): Promise<Answer<AccountListed>> {
  const id = asked === 'own' ? asker.account : asked
  if (id !== asker.account && !asker.administers) return notFound()
  const found = await accountById(tx, asker.organization, id)
  return found ? ok(found) : notFound()
}
