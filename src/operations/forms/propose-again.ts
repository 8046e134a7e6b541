import type { JobRun } from '../../jobs/queue.ts'
import { asService } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { changeDocument, documentsAfter, lockDocument } from '../../store/documents.ts'
import { hashOf } from '../../store/hash.ts'
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

  function again(id: string): Promise<boolean> {
    return transact(context.database, service, async (tx) => {
      const document = await lockDocument(tx, county, id)
      if (document?.state !== 'proposed' || (await transcriptionsOf(tx, county, id)).length > 0) return false
      const cuts = document.proposals.map(({ pages }) => pages)
      const proposals = await proposeFromWords(tx, county, id, cuts)
      if (hashOf(proposals) === hashOf(document.proposals)) return false
      await changeDocument(tx, county, id, { proposals })
      return true
    })
  }
}
