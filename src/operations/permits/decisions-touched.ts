import type { DiscrepancyState } from '../../reconcile/projection.ts'
import type { Tx } from '../../store/database/database.ts'
import { type Decision, decisionsInForce } from '../../store/decisions.ts'
import type { ChangeNoticed } from '../../store/discrepancy-changes.ts'

/** A decision in force that stood on a permit, or on a difference that changed with it. It stands until it is superseded. */
export type DecisionTouched = {
  readonly decision: string
  readonly parcel: string
  readonly discrepancy: string
  readonly action: Decision['action']
  readonly because: 'corrects-this-permit' | 'difference-changed'
  /** Of its difference, where that changed. */
  readonly state: DiscrepancyState | null
}

/** Of the systems that a change touches, before it. */
export async function decisionsResting(
  tx: Tx,
  county: string,
  systems: readonly string[],
): Promise<readonly Decision[]> {
  const all: Decision[] = []
  for (const system of new Set(systems)) all.push(...(await decisionsInForce(tx, county, system)))
  return all
}

export const touchedBy = (
  decisions: readonly Decision[],
  permit: string,
  changes: readonly ChangeNoticed[],
): readonly DecisionTouched[] =>
  decisions.flatMap(({ id, parcel, discrepancy, action, correction }) => {
    const change = changes.find((it) => it.discrepancy === discrepancy)
    const corrects = correction?.permit === permit
    if (!corrects && !change) return []
    return [
      {
        decision: id,
        parcel,
        discrepancy,
        action,
        because: corrects ? ('corrects-this-permit' as const) : ('difference-changed' as const),
        state: change?.body.state ?? null,
      },
    ]
  })
