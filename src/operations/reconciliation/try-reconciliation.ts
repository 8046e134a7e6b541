import { dayOf, type PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { type Reconciliation, reconcile } from '../../reconcile/reconcile.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import type { FiledPermit, PermitRecord } from '../../records/permit.ts'
import type { OperationContext } from '../context.ts'
import { inspectionAhead, keysNotOnRecord } from '../findings/findings-faults.ts'
import { datesAhead } from '../permits/permit-faults.ts'
import { type Answer, invalid } from '../refusal.ts'

export type Trial = {
  /** Whose rules: a place of the rule book, as `quillback`. */
  readonly rules: string
  readonly asOf: PlainDate | null
  readonly permits: readonly PermitRecord[]
  readonly findings: FindingsRecord | null
}

/**
 * The same work on a record and findings that are handed over, and nothing is stored. The permits are known by their
 * place in the list: `permit-1`, so that findings can name a component as `permit-1/tank`.
 */
export function tryReconciliation(
  { book, clock }: Pick<OperationContext, 'book' | 'clock'>,
  { rules, asOf, permits, findings }: Trial,
): Answer<Reconciliation> {
  const today = dayOf(clock())
  if (!book.places.has(rules)) {
    const places = [...book.places.keys()].sort().join(', ')
    return invalid({
      pointer: '/rules',
      message: `there are no rules for "${rules}"; choose one of: ${places}`,
    })
  }
  const latest = asOf !== null && asOf > today ? asOf : today
  const ahead = [
    ...permits.flatMap((record, index) => datesAhead(record, latest, `/permits/${index}`)),
    ...(findings ? inspectionAhead(findings, latest, '/findings') : []),
  ]
  const filed = permits.map(
    (record, index): FiledPermit => ({
      id: `permit-${index + 1}`,
      revision: 1,
      record,
      sources: { '': { kind: 'typed', by: 'the request', on: today } },
    }),
  )
  const loose = findings
    ? keysNotOnRecord(findings, { permits: filed, corrections: [], asOf: asOf ?? today }, '/findings')
    : []
  if (ahead.length + loose.length > 0) return invalid(...ahead, ...loose)
  return ok(
    reconcile({
      county: rules,
      asOf: asOf ?? today,
      permits: filed,
      corrections: [],
      findings: findings && {
        id: 'findings-1',
        firm: 'the request',
        submittedOn: asOf ?? today,
        record: findings,
      },
      book,
    }),
  )
}
