import { invariant } from '../../base/invariant.ts'
import { dayOf } from '../../base/plain-date.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import type { FiledPermit } from '../../records/permit.ts'
import type { System } from '../../records/system.ts'
import { countyById } from '../../store/counties.ts'
import type { Tx } from '../../store/database/database.ts'
import { asCorrection, decisionsInForce } from '../../store/decisions.ts'
import { asSubmitted, type Findings, newestSubmitted } from '../../store/findings.ts'
import { hashOf } from '../../store/hash.ts'
import { permitsOf } from '../../store/permits.ts'
import type { InputsNamed } from '../../store/reconciliations.ts'
import { ruleBookHash } from '../../store/rule-books.ts'
import type { OperationContext } from '../context.ts'
import { systemGiven } from './system-given.ts'

export type Gathered = {
  readonly input: ReconcileInput
  /** The same by name and hash, as it is stored with the answer. */
  readonly named: InputsNamed
  readonly findings: Findings | undefined
}

/**
 * All that a system's reconciliation is a function of, as it stands now. In the service's name: the answer rests on
 * the whole file, whoever's act asks for it.
 */
export async function gatherInput(
  tx: Tx,
  { book, clock }: Pick<OperationContext, 'book' | 'clock'>,
  countyId: string,
  system: System,
): Promise<Gathered> {
  const [county, onFile, decisions, findings] = await Promise.all([
    countyById(tx, countyId),
    permitsOf(tx, countyId, system.id),
    decisionsInForce(tx, countyId, system.id),
    newestSubmitted(tx, countyId, system.id),
  ])
  invariant(county, `a system of ${countyId}, which is no county`)
  const given = await systemGiven(tx, countyId, system, onFile)
  const input: ReconcileInput = {
    county: county.place,
    asOf: dayOf(clock()),
    permits: onFile.map(
      ({ id, revision, record, sources }): FiledPermit => ({ id, revision, record, sources }),
    ),
    corrections: decisions.flatMap((decision) => asCorrection(decision) ?? []),
    findings: findings ? asSubmitted(findings) : null,
    book,
    ...(given ? { system: given } : {}),
  }
  return { input, named: nameInputs(countyId, input), findings }
}

export const nameInputs = (county: string, input: ReconcileInput): InputsNamed => ({
  county,
  place: input.county,
  asOf: input.asOf,
  permits: input.permits.map(({ id, revision, record, sources }) => ({
    id,
    revision,
    hash: hashOf({ record, sources }),
  })),
  corrections: input.corrections.map((correction) => ({
    decision: correction.decision,
    hash: hashOf(correction),
  })),
  findings: input.findings && { id: input.findings.id, hash: hashOf(input.findings) },
  ruleBook: ruleBookHash(input.book),
  ...(input.system ? { system: input.system } : {}),
})
