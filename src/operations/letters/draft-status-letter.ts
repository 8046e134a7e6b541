import { invariant } from '../../base/invariant.ts'
import { isNonEmpty } from '../../base/non-empty.ts'
import { ok } from '../../base/result.ts'
import { ROOMS, statusLetter } from '../../letters/content/status-letter.ts'
import { toldOf } from '../../reconcile/status.ts'
import { asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { discrepanciesOf } from '../../store/discrepancies.ts'
import { permitsOf } from '../../store/permits.ts'
import { newestReconciliation, type StoredReconciliation } from '../../store/reconciliations.ts'
import { fullAnswer } from '../reconciliation/full-answer.ts'
import type { Drafting } from './draft.ts'
import { factKey, gatherFacts } from './gather-facts.ts'

/**
 * The status of a parcel for anyone. In the service's name, because it rests on more than an agent may see; what it
 * takes from there is only what `statusLetter` shows to agents.
 */
export const draftStatusLetter: Drafting = ({ within, actor, parcel, systems, status }) =>
  transact(within, asService(actor), async (tx) => {
    const { county } = actor
    const told = systems.length > 1 ? toldOf(systems) : []
    const each = []
    for (const [at, { id }] of systems.entries()) {
      const reconciliation = await newestReconciliation(tx, county, id)
      const file = reconciliation ? await fileOf(tx, county, reconciliation, parcel.id) : null
      each.push({
        system: told[at] ?? null,
        file,
        reconciliation,
        differing: await discrepanciesOf(tx, county, id),
      })
    }
    const facts = await gatherFacts(tx, county, systems, status.word)
    const standing = each.flatMap(({ system, differing }) =>
      differing
        .filter(({ state }) => state !== 'vanished')
        .map(({ id, key, body, system: of }) => ({
          id,
          discrepancy: body,
          decided: facts.differences.find((it) => it.key === factKey(systems, of, key))?.decided ?? null,
          ...(system ? { system } : {}),
        })),
    )
    const files = each.map(({ system, file }) => ({ system, file }))
    invariant(isNonEmpty(files), 'a parcel has a system')
    const first = each.find(({ reconciliation }) => reconciliation)?.reconciliation
    return ok({
      asOf: status.asOf,
      reconciliation: first ?? null,
      facts,
      contents: (frame) => {
        const contents = ROOMS.map((room) => statusLetter(frame, { status, files, standing }, room))
        invariant(isNonEmpty(contents), 'there is room for some letter')
        return contents
      },
      mostPages: 1,
    })
  })

/** The answer and the permits that it rests on: of those in another parcel's file, which shares the system, the count. */
async function fileOf(tx: Tx, county: string, stored: StoredReconciliation, parcel: string) {
  const { asBuilt, ...answer } = (await fullAnswer(tx, county, stored)).result
  const elsewhere = new Set(
    (await permitsOf(tx, county, stored.system)).flatMap((it) => (it.parcel === parcel ? [] : [it.id])),
  )
  const permits = asBuilt.permits.filter(({ id }) => !elsewhere.has(id))
  return { answer, permits, elsewhere: asBuilt.permits.length - permits.length, on: asBuilt.on }
}
