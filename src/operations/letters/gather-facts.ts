import type { DifferenceFact, LetterFacts } from '../../letters/facts.ts'
import type { StatusWord } from '../../reconcile/status.ts'
import type { System } from '../../records/system.ts'
import type { Tx } from '../../store/database/database.ts'
import { asCorrection, decisionsInForce } from '../../store/decisions.ts'
import { discrepanciesOf } from '../../store/discrepancies.ts'
import { newestSubmitted } from '../../store/findings.ts'
import { permitsOf } from '../../store/permits.ts'

/** One key may stand on each of two systems. */
export const factKey = (systems: readonly unknown[], system: string, key: string): string =>
  systems.length > 1 ? `${system} ${key}` : key

/** What any letter on a parcel would rest on now; `word` is the status that was derived a moment ago. */
export async function gatherFacts(
  tx: Tx,
  county: string,
  systems: readonly Pick<System, 'id'>[],
  word: StatusWord,
): Promise<LetterFacts & { readonly differences: readonly DifferenceFact[] }> {
  const each = await Promise.all(
    systems.map(({ id }) =>
      Promise.all([
        permitsOf(tx, county, id),
        decisionsInForce(tx, county, id),
        newestSubmitted(tx, county, id),
        discrepanciesOf(tx, county, id),
      ]),
    ),
  )
  const permits = each.flatMap(([it]) => it)
  const decisions = each.flatMap(([, it]) => it)
  const discrepancies = each.flatMap(([, , , it]) => it)
  const inspections = each.flatMap(([, , it]) => it?.id ?? [])
  return {
    systems: systems.map(({ id }) => id),
    permits: permits.map(({ id, revision }) => ({ id, revision })),
    corrections: decisions.filter((decision) => asCorrection(decision)).map(({ id }) => id),
    // One inspection, or those of several systems: what is compared is whether they are the same ones.
    findings: { id: inspections.length > 0 ? inspections.sort().join(' ') : null },
    differences: discrepancies
      .filter(({ state }) => state !== 'vanished')
      .map(({ system, key, evidenceHash, state, decision }) => ({
        key: factKey(systems, system, key),
        evidence: evidenceHash,
        decided: state === 'decided' ? (decisions.find(({ id }) => id === decision)?.action ?? null) : null,
      })),
    word,
  }
}
