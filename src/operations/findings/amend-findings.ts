import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { amendmentOf, type Findings, findingsById, insertDraft } from '../../store/findings.ts'
import { lockParcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { mayHaveAnother } from '../quotas.ts'
import { type Answer, conflict, invalid, notFound } from '../refusal.ts'
import { newDraft } from './draft-findings.ts'
import { inspectionAhead } from './findings-faults.ts'

/** Starts a full draft that replaces submitted findings once it is submitted too. */
export const amendFindings = (
  context: OperationContext,
  actor: Person,
  amends: string,
  record: FindingsRecord,
): Promise<Answer<Findings>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account, organization } = actor
    const at = context.clock()
    const known = await findingsById(tx, county, amends)
    if (!known) return notFound()
    if (known.state === 'draft') return conflict('These findings are still a draft: change them with PUT.')
    const issues = inspectionAhead(record, dayOf(at))
    if (issues.length > 0) return invalid(...issues)
    await lockParcel(tx, county, known.parcel)
    const other = await amendmentOf(tx, county, amends)
    if (other) return conflict(`These findings are already amended by ${other}. Continue with those.`)
    const may = await mayHaveAnother(tx, context, 'drafts')
    if (!may.ok) return may
    const { parcel, system } = known
    const draft = { id: context.newId(), parcel, system, organization, record, amends }
    await insertDraft(tx, county, draft, { by: account, at })
    return ok(newDraft(draft, at))
  })
