import { ok } from '../../base/result.ts'
import { accountNames } from '../../store/accounts.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type FilingChange, filingChangesOf, mergedInto } from '../../store/filing-changes.ts'
import { type Parcel, parcelById } from '../../store/parcels.ts'
import { type NumberedAlike, numberedAlike, type PermitOnFile, permitById } from '../../store/permits.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type PermitPage = {
  readonly permit: PermitOnFile
  readonly parcel: Parcel
  /** The one that it was merged into, and those that were merged into it. */
  readonly into: PermitOnFile | null
  readonly holds: readonly PermitOnFile[]
  /** Permits of the same number, in any writing, in other parcels' files: perhaps the same paper. For a reviewer. */
  readonly alike: readonly NumberedAlike[]
  /** Oldest first. */
  readonly filingChanges: readonly FilingChange[]
  /** Of those who made them, where the reader may know; and of the parcels that they name. */
  readonly names: ReadonlyMap<string, string>
  readonly numbers: ReadonlyMap<string, string>
}

/** A permit with all that its page names. */
export const readPermitPage = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<PermitPage>> =>
  transact(context.database, actor, async (tx) => {
    const { county } = actor
    const permit = await permitById(tx, county, id)
    const parcel = permit && (await parcelById(tx, county, permit.parcel))
    if (!parcel) return notFound()
    const filingChanges = await filingChangesOf(tx, county, id)
    const holds: PermitOnFile[] = []
    for (const held of await mergedInto(tx, county, id)) holds.push((await permitById(tx, county, held))!)
    const numbers = new Map([[parcel.id, parcel.number]])
    for (const named of new Set(filingChanges.flatMap((it) => [it.fromParcel, it.toParcel]))) {
      const it = await parcelById(tx, county, named)
      if (it) numbers.set(it.id, it.number)
    }
    return ok({
      permit,
      parcel,
      into: permit.mergedInto === null ? null : ((await permitById(tx, county, permit.mergedInto)) ?? null),
      holds,
      alike:
        actor.role === 'reviewer' && permit.standing === 'in-file'
          ? await numberedAlike(tx, county, { number: permit.record.number, parcel: permit.parcel })
          : [],
      filingChanges,
      names: await accountNames(
        tx,
        filingChanges.map(({ changedBy }) => changedBy),
      ),
      numbers,
    })
  })
