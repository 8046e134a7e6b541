import { dayOf } from '../base/plain-date.ts'
import type { Correction } from '../records/as-built.ts'
import type { DecisionAction } from '../records/decision.ts'
import type { Tx } from './database/database.ts'
import { ofSystem } from './of-system.ts'

/** A correction as it was decided: the value as it was written, and as it was read. */
export type CorrectionDecided = Pick<Correction, 'permit' | 'component' | 'field' | 'value'> & {
  readonly written: unknown
}

/** What a reviewer did about a discrepancy: never changed, only superseded. */
export type Decision = {
  readonly id: string
  readonly discrepancy: string
  readonly parcel: string
  readonly system: string
  readonly action: DecisionAction
  readonly reason: string
  readonly evidenceHash: string
  readonly correction: CorrectionDecided | null
  /** What has to be done, where that was said in words. */
  readonly asks: string | null
  readonly supersedes: string | null
  readonly supersededBy: string | null
  readonly decidedBy: string
  readonly decidedAt: Date
}

type Body = Pick<Decision, 'correction' | 'asks'>

const select = (tx: Tx, county: string) =>
  tx
    .selectFrom('decision as d')
    .leftJoin('decision as later', (join) =>
      join.onRef('later.county', '=', 'd.county').onRef('later.supersedes', '=', 'd.id'),
    )
    .select([
      'd.id',
      'd.discrepancy',
      'd.parcel',
      'd.system',
      'd.action',
      'd.reason',
      'd.evidence_hash as evidenceHash',
      'd.body',
      'd.supersedes',
      'later.id as supersededBy',
      'd.decided_by as decidedBy',
      'd.decided_at as decidedAt',
    ])
    .where('d.county', '=', county)

type Row = Omit<Decision, 'action' | keyof Body> & { readonly action: string; readonly body: unknown }
const asDecision = ({ body, ...row }: Row): Decision => {
  const { correction, asks } = body as Body
  return { ...row, action: row.action as DecisionAction, correction, asks }
}

export async function decisionById(tx: Tx, county: string, id: string): Promise<Decision | undefined> {
  const row = await select(tx, county).where('d.id', '=', id).executeTakeFirst()
  return row && asDecision(row)
}

/** Oldest first, the superseded ones too. */
export async function decisionsAbout(
  tx: Tx,
  county: string,
  discrepancy: string,
): Promise<readonly Decision[]> {
  const rows = await select(tx, county).where('d.discrepancy', '=', discrepancy).orderBy('d.id').execute()
  return rows.map(asDecision)
}

/** All that was ever decided on a system, oldest first. */
export async function decisionsOn(tx: Tx, county: string, system: string): Promise<readonly Decision[]> {
  const rows = await select(tx, county).where('d.system', '=', system).orderBy('d.id').execute()
  return rows.map(asDecision)
}

/** The decisions in force on a system, oldest first. */
export async function decisionsInForce(tx: Tx, county: string, system: string): Promise<readonly Decision[]> {
  const rows = await select(tx, county)
    .where('d.system', '=', system)
    .where('later.id', 'is', null)
    .orderBy('d.decided_at')
    .orderBy('d.id')
    .execute()
  return rows.map(asDecision)
}

/** The corrections that those decisions make, as the fold takes them; `undefined` for another kind of decision. */
export function asCorrection(decision: Decision): Correction | undefined {
  const { id, correction, decidedAt, decidedBy } = decision
  if (!correction) return undefined
  const { permit, component, field, value } = correction
  return { decision: id, on: dayOf(decidedAt), by: decidedBy, permit, component, field, value }
}

export async function insertDecision(
  tx: Tx,
  county: string,
  made: Omit<Decision, 'supersededBy'>,
): Promise<void> {
  const { correction, asks } = made
  await tx
    .insertInto('decision')
    .values({
      county,
      id: made.id,
      discrepancy: made.discrepancy,
      parcel: made.parcel,
      of_system: ofSystem(made),
      action: made.action,
      reason: made.reason,
      evidence_hash: made.evidenceHash,
      body: JSON.stringify({ correction, asks } satisfies Body),
      supersedes: made.supersedes,
      decided_by: made.decidedBy,
      decided_at: made.decidedAt,
    })
    .execute()
}
