import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Findings, findingsById, findingsOf } from '../../store/findings.ts'
import { organizationNames } from '../../store/organizations.ts'
import { systemsOf } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { type Answer, notFound } from '../refusal.ts'

/** Findings with the firm's name, as far as the asker may know it. */
export type FindingsRead = Findings & { readonly firmName: string | null }

/** A firm sees its own, drafts too; a reviewer those that were submitted. */
export const readFindings = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<FindingsRead>> =>
  transact(context.database, actor, async (tx) => {
    const findings = await findingsById(tx, actor.county, id)
    if (!findings) return notFound()
    const names = await organizationNames(tx, [findings.organization])
    return ok({ ...findings, firmName: names.get(findings.organization) ?? null })
  })

/** All of a parcel's systems that the asker may see, newest inspection first. */
export const listFindings = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  asked: string,
): Promise<Answer<readonly FindingsRead[]>> =>
  transact(context.database, actor, async (tx) => {
    const parcel = await parcelAsked(tx, actor.county, asked)
    if (!parcel.ok) return parcel
    const systems = await systemsOf(tx, actor.county, parcel.value.id)
    const each = await Promise.all(systems.map(({ id }) => findingsOf(tx, actor.county, id)))
    const all = each.flat().toSorted((a, b) => (a.record.inspectedOn < b.record.inspectedOn ? 1 : -1))
    const names = await organizationNames(
      tx,
      all.map(({ organization }) => organization),
    )
    return ok(all.map((it) => ({ ...it, firmName: names.get(it.organization) ?? null })))
  })
