import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { changeDraft, type Findings, lockFindings } from '../../store/findings.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { inspectionAhead } from './findings-faults.ts'

export type FindingsChange = {
  readonly id: string
  readonly version: number | undefined
  readonly record: FindingsRecord
}

/** Replaces what a draft says. Findings that were submitted are amended instead. */
export const changeFindings = (
  context: OperationContext,
  actor: Person,
  { id, version, record }: FindingsChange,
): Promise<Answer<Findings>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account } = actor
    const at = context.clock()
    const draft = await lockFindings(tx, county, id)
    if (!draft) return notFound()
    if (draft.state === 'submitted') return conflict(HANDED_IN)
    if (version !== undefined && version !== draft.revision) return stale()
    const issues = inspectionAhead(record, dayOf(at))
    if (issues.length > 0) return invalid(...issues)
    const revision = draft.revision + 1
    await changeDraft(tx, county, { id, revision, record }, { by: account, at })
    return ok({ ...draft, record, revision, changedAt: at })
  })

export const HANDED_IN =
  'These findings are submitted and cannot change. Amend them instead: POST .../findings/{id}/amendment.'
