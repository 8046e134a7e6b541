import { canonicalText } from '../../base/canonical.ts'
import { ok } from '../../base/result.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { keptForm } from '../../reconcile/kept.ts'
import { reconcile } from '../../reconcile/reconcile.ts'
import type { FiledPermit } from '../../records/permit.ts'
import { type Actor, asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { asCorrection, decisionById } from '../../store/decisions.ts'
import { asSubmitted, findingsById } from '../../store/findings.ts'
import { sha256 } from '../../store/hash.ts'
import { permitAt } from '../../store/permits.ts'
import { reconciliationById, type StoredReconciliation } from '../../store/reconciliations.ts'
import { ruleBookByHash } from '../../store/rule-books.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'
import { ENGINE } from './engine.ts'
import { nameInputs } from './gather-input.ts'

export type Replay = {
  readonly reconciliation: string
  readonly engineThen: string
  readonly engineNow: string
  /** What of its inputs is not kept, or not as it was; empty where it can be redone. */
  readonly missing: readonly string[]
  readonly resultHashThen: string
  /** Null where it can't be redone. */
  readonly resultHashNow: string | null
  /** Its bytes, canonical JSON, computed again from the kept inputs. */
  readonly bytes: string | null
  readonly same: boolean
}

/** Computes a stored reconciliation again from the inputs it names, and says whether the answer is the same to the byte. */
export const replayReconciliation = (
  context: Pick<OperationContext, 'database'>,
  actor: Actor,
  id: string,
): Promise<Answer<Replay>> =>
  transact(context.database, asService(actor), async (tx) => {
    const stored = await reconciliationById(tx, actor.county, id)
    if (!stored) return notFound()
    const { input, missing } = await regather(tx, actor.county, stored)
    const bytes = input ? canonicalText(keptForm(reconcile(input))) : null
    const resultHashNow = bytes === null ? null : sha256(bytes)
    return ok({
      reconciliation: id,
      engineThen: stored.engine,
      engineNow: ENGINE,
      missing,
      resultHashThen: stored.resultHash,
      resultHashNow,
      bytes,
      same: resultHashNow === stored.resultHash,
    })
  })

/** The inputs of a stored reconciliation as they were; `input` is null where something of them is not kept. */
export async function regather(
  tx: Tx,
  county: string,
  { inputs, inputHash }: StoredReconciliation,
): Promise<{ readonly input: ReconcileInput | null; readonly missing: readonly string[] }> {
  const missing: string[] = []
  const kept = <T>(value: T | null | undefined, what: string): T | null => {
    if (value === undefined || value === null) missing.push(what)
    return value ?? null
  }
  const permits: FiledPermit[] = []
  for (const { id, revision } of inputs.permits) {
    const permit = kept(await permitAt(tx, county, id, revision), `permit ${id}, revision ${revision}`)
    if (permit) permits.push(permit)
  }
  const corrections = []
  for (const { decision } of inputs.corrections) {
    const found = await decisionById(tx, county, decision)
    const correction = kept(found && asCorrection(found), `decision ${decision}`)
    if (correction) corrections.push(correction)
  }
  const found = inputs.findings && (await findingsById(tx, county, inputs.findings.id))
  const findings = inputs.findings
    ? kept(found && asSubmitted(found), `findings ${inputs.findings.id}`)
    : null
  const book = kept(await ruleBookByHash(tx, inputs.ruleBook), `rules ${inputs.ruleBook}`)
  if (!book || missing.length > 0) return { input: null, missing }
  const input: ReconcileInput = {
    county: inputs.place,
    asOf: inputs.asOf,
    permits,
    corrections,
    findings,
    book,
    ...(inputs.system ? { system: inputs.system } : {}),
  }
  const named = sha256(canonicalText(nameInputs(county, input)))
  return named === inputHash ? { input, missing } : { input: null, missing: ['inputs as they were named'] }
}
