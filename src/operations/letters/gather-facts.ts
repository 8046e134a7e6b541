import type { DifferenceFact, LetterFacts } from '../../letters/facts.ts'
import type { StatusWord } from '../../reconcile/status.ts'
import type { Tx } from '../../store/database/database.ts'
import { asCorrection, decisionsInForce } from '../../store/decisions.ts'
import { discrepanciesOf } from '../../store/discrepancies.ts'
import { newestSubmitted } from '../../store/findings.ts'
import { permitsOf } from '../../store/permits.ts'

/** What any letter on a parcel would rest on now; `word` is the status that was derived a moment ago. */
export async function gatherFacts(
  tx: Tx,
  county: string,
  parcel: string,
  word: StatusWord,
): Promise<LetterFacts & { readonly differences: readonly DifferenceFact[] }> {
  const [permits, decisions, findings, discrepancies] = await Promise.all([
    permitsOf(tx, county, parcel),
    decisionsInForce(tx, county, parcel),
    newestSubmitted(tx, county, parcel),
    discrepanciesOf(tx, county, parcel),
  ])
  return {
    permits: permits.map(({ id, revision }) => ({ id, revision })),
    corrections: decisions.filter((decision) => asCorrection(decision)).map(({ id }) => id),
    findings: { id: findings?.id ?? null },
    differences: discrepancies
      .filter(({ state }) => state !== 'vanished')
      .map(({ key, evidenceHash, state, decision }) => ({
        key,
        evidence: evidenceHash,
        decided: state === 'decided' ? (decisions.find(({ id }) => id === decision)?.action ?? null) : null,
      })),
    word,
  }
}
