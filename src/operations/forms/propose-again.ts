import type { JobRun } from '../../jobs/queue.ts'
import { asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import {
  type Document,
  documentById,
  documentsAfter,
  lockDocument,
  proposeOtherwise,
} from '../../store/documents.ts'
import { transcriptionsOf } from '../../store/transcriptions.ts'
import type { OperationContext } from '../context.ts'
import { proposeFromWords } from '../documents/propose-from-words.ts'

const AT_ONCE = 50

/**
 * A form was taken up or withdrawn: papers that wait to be confirmed are proposed anew from the words that were read, cut
 * as they are. One of which a permit is confirmed stays as that one was read. Only what comes out otherwise is changed.
 */
export async function proposeAgain(
  context: OperationContext,
  { actor, report, signal }: JobRun<'propose-again'>,
): Promise<{ readonly looked: number; readonly changed: number }> {
  const service = asService(actor)
  const { county } = actor
  let [looked, changed] = [0, 0]
  for (let after: string | undefined; ; ) {
    const documents = await transact(context.database, service, (tx) =>
      documentsAfter(tx, county, 'proposed', after, AT_ONCE),
    )
    for (const { id } of documents) {
      signal.throwIfAborted()
      if (await again(id)) changed += 1
      looked += 1
      await report({ done: looked, total: null, says: `${looked} checked, ${changed} read again` })
    }
    after = documents.at(-1)?.id
    if (documents.length < AT_ONCE) return { looked, changed }
  }

  async function again(id: string): Promise<boolean> {
    const waiting = (tx: Tx, document: Document | undefined) =>
      document?.state === 'proposed'
        ? transcriptionsOf(tx, county, id).then((made) => made.length === 0)
        : Promise.resolve(false)
    const before = await transact(context.database, service, async (tx) => {
      const document = await documentById(tx, county, id)
      return (await waiting(tx, document)) ? document : undefined
    })
    if (!before) return false
    const { proposals, gaveUp } = await proposeFromWords(context.database, actor, id, before.permits, signal)
    if (gaveUp) return false
    return transact(context.database, service, async (tx) => {
      const document = await lockDocument(tx, county, id)
      // Somebody was at it meanwhile: what they did stands.
      if (document?.revision !== before.revision || !(await waiting(tx, document))) return false
      return proposeOtherwise(tx, county, id, proposals)
    })
  }
}
