import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { isDuplicate } from '../../store/database/database-fault.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { insertWithdrawal, type Letter, letterById } from '../../store/letters.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'

const AGAIN = 'This letter is already withdrawn.'

/** Takes a letter back for good. The letter stays as it is; whoever checks it is told, with the reason. */
export async function withdrawLetter(
  context: OperationContext,
  actor: Person,
  id: string,
  reason: string,
): Promise<Answer<Letter>> {
  try {
    return await transact(context.database, actor, async (tx) => {
      const letter = await letterById(tx, actor.county, id)
      if (!letter) return notFound()
      if (letter.withdrawn) return conflict(AGAIN)
      const at = context.clock()
      const withdrawn = { reason, by: actor.account, at }
      await insertWithdrawal(tx, actor.county, id, withdrawn)
      await recordEvent(tx, actor, {
        id: context.newId(),
        kind: 'letter-withdrawn',
        subjectKind: 'letter',
        subject: id,
        parcel: letter.parcel,
        body: { reason },
        at,
      })
      return ok({ ...letter, withdrawn })
    })
  } catch (fault) {
    if (isDuplicate(fault)) return conflict(AGAIN)
    throw fault
  }
}
