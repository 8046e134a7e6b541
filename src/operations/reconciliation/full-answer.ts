import { full, keptForm } from '../../reconcile/kept.ts'
import { type Reconciliation, reconcile } from '../../reconcile/reconcile.ts'
import { type Actor, asService } from '../../store/database/actor.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { hashOf } from '../../store/hash.ts'
import type { StoredReconciliation } from '../../store/reconciliations.ts'
import { regather } from './replay-reconciliation.ts'

/**
 * A stored answer with the as-built and the working that its inputs give again. Where this version answers otherwise, or
 * not all of its inputs are kept, it is the stored answer without working: what was answered stands.
 */
export async function fullAnswer(
  tx: Tx,
  county: string,
  stored: StoredReconciliation,
): Promise<{ readonly result: Reconciliation; readonly missing: readonly string[] }> {
  const { input, missing } = await regather(tx, county, stored)
  if (!input) return { result: full(stored.result, NOTHING), missing }
  const again = reconcile(input)
  const same = hashOf(keptForm(again)) === stored.resultHash
  return { result: same ? again : full(stored.result, again.asBuilt), missing }
}

/** The same in the service's name: an answer rests on more than whoever may read it may see. */
export const fullAnswerFor = (
  within: Database,
  actor: Actor,
  stored: StoredReconciliation,
): Promise<Reconciliation> =>
  transact(within, asService(actor), async (tx) => (await fullAnswer(tx, actor.county, stored)).result)

/** Where the papers that it rested on are gone. */
const NOTHING: Reconciliation['asBuilt'] = {
  on: '1900-01-01' as Reconciliation['asBuilt']['on'],
  permits: [],
  unapproved: [],
  bedrooms: { state: 'silent' },
  designFlowGpd: { state: 'silent' },
  percRateMpi: { state: 'silent' },
  soilTexture: { state: 'silent' },
  components: [],
  contradictions: [],
}
