import { ok } from '../../base/result.ts'
import type { SystemUse } from '../../catalog/choices.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { System, SystemOnParcel } from '../../records/system.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { hashOf } from '../../store/hash.ts'
import { filedInSystem, lockTogether, systemById, systemsOf, writeSystem } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { type Reconciled, reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { closeSystem } from './close-system.ts'

/** A system as a reviewer says it is; parcels by number or id. */
export type SystemEntry = {
  readonly use: SystemUse
  readonly label: string | null
  readonly parcels: readonly Omit<SystemOnParcel, 'number'>[]
  readonly reason: string
}

export type SystemSaidNow = { readonly system: System; readonly reconciled: Reconciled | null }

/** Says that there is another system in a parcel's file; nothing is moved into it. */
export const addSystem = (
  context: OperationContext,
  actor: Person,
  asked: string,
  entry: SystemEntry,
): Promise<Answer<SystemSaidNow>> =>
  transact(context.database, actor, async (tx, within) => {
    const home = await parcelAsked(tx, actor.county, asked)
    if (!home.ok) return home
    const { id: parcel } = home.value
    const parcels = await parcelsSaid(tx, actor.county, entry)
    if (!parcels.ok) return parcels
    if (!parcels.value.some((it) => it.parcel === parcel)) {
      return invalid({
        pointer: '/parcels',
        message: `leaves out ${home.value.number}, in whose file it is: say that it serves that parcel or lies on it`,
      })
    }
    const system: System = {
      id: context.newId(),
      parcel,
      ...said(entry),
      parcels: parcels.value,
      revision: 0,
    }
    return keep(tx, { ...context, database: within }, actor, system, null, entry.reason)
  })

export type SystemChangeAsked = {
  readonly id: string
  readonly version: number | undefined
  readonly entry: SystemEntry
}

/** Says anew what a system serves and where it lies; of a parcel's own for the first time, where nothing was said. */
export const changeSystem = (
  context: OperationContext,
  actor: Person,
  { id, version, entry }: SystemChangeAsked,
): Promise<Answer<SystemSaidNow>> =>
  transact(context.database, actor, async (tx, within) => {
    const known = await systemById(tx, actor.county, id)
    if (!known) return notFound()
    const parcels = await parcelsSaid(tx, actor.county, entry)
    if (!parcels.ok) return parcels
    const system: System = { ...known, ...said(entry), parcels: parcels.value }
    return keep(tx, { ...context, database: within }, actor, system, version ?? null, entry.reason)
  })

const said = ({ use, label }: SystemEntry) => ({ use, label })

/** Writes it with everything that hangs together held, and reconciles all of that. */
async function keep(
  tx: Tx,
  context: OperationContext,
  actor: Person,
  asked: System,
  version: number | null,
  reason: string,
): Promise<Answer<SystemSaidNow>> {
  const { county, account } = actor
  const at = context.clock()
  const seen = await systemById(tx, county, asked.id)
  const touched = [...new Set([asked, seen].flatMap((it) => it?.parcels.map(({ parcel }) => parcel) ?? []))]
  await lockTogether(tx, county, [asked.parcel, ...touched])
  const before = await systemById(tx, county, asked.id)
  if (version !== null && before && version !== before.revision) return stale()
  const refusal = before && (await stillNeeded(tx, county, before, asked))
  if (refusal) return conflict(refusal)
  const system: System = { ...asked, revision: (before?.revision ?? 0) + 1 }
  await writeSystem(tx, county, system, { by: account, at, reason })
  await recordEvent(tx, actor, {
    id: context.newId(),
    kind: before ? 'system-changed' : 'system-added',
    subjectKind: 'system',
    subject: system.id,
    parcel: system.parcel,
    beforeHash: before ? hashOf(before) : null,
    afterHash: hashOf(system),
    body: { reason },
    at,
  })
  if (system.parcels.length === 0) {
    await transact(context.database, asService(actor), (service) =>
      closeSystem(service, context, county, system.id),
    )
  }
  let reconciled: Reconciled | null = null
  for (const parcel of [...new Set([system.parcel, ...touched])].sort()) {
    const run = await reconcileParcel(context, actor, parcel, 'system-changed', system.id)
    if (parcel === system.parcel && system.parcels.length > 0) reconciled = run
  }
  return ok({ system, reconciled })
}

/** Papers and inspections lie in the file of a parcel that their system serves or lies on; and every parcel keeps one system. */
async function stillNeeded(tx: Tx, county: string, before: System, now: System): Promise<string | undefined> {
  const gone = before.parcels.filter((it) => !now.parcels.some(({ parcel }) => parcel === it.parcel))
  for (const { parcel, number } of gone) {
    const { permits, findings } = await filedInSystem(tx, county, before.id, parcel)
    if (permits + findings > 0) {
      return (
        `${counted(permits, 'permit')} and ${counted(findings, 'inspection')} in the file of ${number} belong to this ` +
        'system: say first, by correcting each permit, to which system it belongs. An inspection stays where it was made.'
      )
    }
    if ((await systemsOf(tx, county, parcel)).length === 1) {
      return `${number} would have no system left: say first which other system serves it, or lies on it.`
    }
  }
  return undefined
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

/** The parcels as they are on the list; every fault of all of them. */
async function parcelsSaid(
  tx: Tx,
  county: string,
  { parcels }: SystemEntry,
): Promise<Answer<readonly SystemOnParcel[]>> {
  const issues: EntryIssue[] = []
  const found: SystemOnParcel[] = []
  for (const [index, it] of parcels.entries()) {
    const here = `/parcels/${index}`
    const parcel = await parcelAsked(tx, county, it.parcel)
    if (!parcel.ok)
      issues.push({ pointer: `${here}/parcel`, message: `there is no parcel ${it.parcel} in this county` })
    else if (found.some((other) => other.parcel === parcel.value.id))
      issues.push({ pointer: `${here}/parcel`, message: 'is named twice: say all of it at once' })
    else found.push({ ...it, parcel: parcel.value.id, number: parcel.value.number })
    if (!it.serves && !it.liesOn)
      issues.push({
        pointer: here,
        message: 'say that it serves this parcel, lies on it, or both; else leave it out',
      })
    if (!it.serves && (it.bedrooms !== null || it.designFlowGpd !== null))
      issues.push({
        pointer: here,
        message: 'has bedrooms or a flow of a parcel that the system does not serve',
      })
  }
  const shared = found.filter(({ serves }) => serves).length > 1
  if (!shared && found.some(({ bedrooms, designFlowGpd }) => bedrooms !== null || designFlowGpd !== null))
    issues.push({
      pointer: '/parcels',
      message:
        'bedrooms and flow are said here only of a system that serves several parcels: a permit states the others',
    })
  return issues.length > 0 ? invalid(...issues) : ok(found)
}
