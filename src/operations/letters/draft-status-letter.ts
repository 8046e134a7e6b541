import { invariant } from '../../base/invariant.ts'
import { isNonEmpty } from '../../base/non-empty.ts'
import { ok } from '../../base/result.ts'
import { ROOMS, statusLetter } from '../../letters/content/status-letter.ts'
import { asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { discrepanciesOf } from '../../store/discrepancies.ts'
import { newestReconciliation, type StoredReconciliation } from '../../store/reconciliations.ts'
import { fullAnswer } from '../reconciliation/full-answer.ts'
import type { Drafting } from './draft.ts'
import { gatherFacts } from './gather-facts.ts'

/**
 * The status of a parcel for anyone. In the service's name, because it rests on more than an agent may see; what it
 * takes from there is only what `statusLetter` shows to agents.
 */
export const draftStatusLetter: Drafting = ({ within, actor, parcel, status }) =>
  transact(within, asService(actor), async (tx) => {
    const { county } = actor
    const [reconciliation, discrepancies, facts] = await Promise.all([
      newestReconciliation(tx, county, parcel.id),
      discrepanciesOf(tx, county, parcel.id),
      gatherFacts(tx, county, parcel.id, status.word),
    ])
    const file = reconciliation ? await fileOf(tx, county, reconciliation) : null
    const standing = discrepancies
      .filter(({ state }) => state !== 'vanished')
      .map(({ id, key, body }) => ({
        id,
        discrepancy: body,
        decided: facts.differences.find((it) => it.key === key)?.decided ?? null,
      }))
    return ok({
      asOf: status.asOf,
      reconciliation: reconciliation ?? null,
      facts,
      contents: (frame) => {
        const contents = ROOMS.map((room) => statusLetter(frame, { status, file, standing }, room))
        invariant(isNonEmpty(contents), 'there is room for some letter')
        return contents
      },
      mostPages: 1,
    })
  })

/** The answer and the permits that it rests on. */
async function fileOf(tx: Tx, county: string, stored: StoredReconciliation) {
  const { asBuilt, ...answer } = (await fullAnswer(tx, county, stored)).result
  return { answer, permits: asBuilt.permits, on: asBuilt.on }
}
