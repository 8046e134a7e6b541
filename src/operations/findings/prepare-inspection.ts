import { ok } from '../../base/result.ts'
import { type InspectionBrief, inspectionBrief } from '../../brief/inspection-brief.ts'
import { layOut, type ReconcileInput } from '../../reconcile/case.ts'
import type { AsBuilt } from '../../records/as-built.ts'
import type { System } from '../../records/system.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Findings, findingsOf } from '../../store/findings.ts'
import type { Parcel } from '../../store/parcels.ts'
import { type Photo, photosOf } from '../../store/photos.ts'
import { systemName } from '../../words/system.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import type { Answer } from '../refusal.ts'
import { addressOf } from '../systems/system-address.ts'
import { systemAsked } from '../systems/system-asked.ts'

/** What a firm takes along to a parcel: all that its inspection will be compared with, and what it has typed so far. */
export type InspectionPrepared = {
  /** Where it has several systems, its number is that of an address of this one. */
  readonly parcel: Parcel
  readonly system: System
  /** The same that a reconciliation would take today, less any findings. */
  readonly input: Omit<ReconcileInput, 'findings'>
  readonly asBuilt: AsBuilt
  readonly brief: InspectionBrief
  /** The firm's own: the draft it is at, and what it last submitted. */
  readonly draft: Findings | null
  readonly submitted: Findings | null
  /** Of the draft; of what was submitted, where there is no draft. */
  readonly photos: readonly Photo[]
}

export const prepareInspection = (
  context: OperationContext,
  actor: Person,
  asked: string,
  askedSystem?: string,
): Promise<Answer<InspectionPrepared>> =>
  transact(context.database, actor, async (tx, within) => {
    const found = await systemAsked(tx, actor.county, asked, askedSystem)
    if (!found.ok) return found
    const { parcel, system, systems } = found.value
    const { input, findings } = await transact(within, asService(actor), (service) =>
      gatherInput(service, context, actor.county, system),
    )
    const own = await findingsOf(tx, actor.county, system.id)
    const draft = own.find(({ state }) => state === 'draft') ?? null
    const submitted = own.find(({ state, amendedBy }) => state === 'submitted' && amendedBy === null) ?? null
    const seen = draft ?? submitted
    // They may be another firm's.
    const { findings: _, ...file } = input
    const before = { ...file, findings: null }
    return ok({
      parcel:
        systems.length === 1
          ? parcel
          : {
              ...parcel,
              number: addressOf(parcel.number, system, systems),
              address: [parcel.address, systemName(system, systems)].filter((it) => it !== null).join(', '),
            },
      system,
      input: file,
      asBuilt: layOut(before).asBuilt,
      // Where things were found last time belongs to the brief, but to a firm only by an inspection of its own.
      brief: inspectionBrief(findings?.organization === actor.organization ? input : before),
      draft,
      submitted,
      photos: seen ? await photosOf(tx, actor.county, seen.id) : [],
    })
  })
