import { invariant } from '../../base/invariant.ts'
import { ok } from '../../base/result.ts'
import { type Reconciliation, reconcile } from '../../reconcile/reconcile.ts'
import type { Source } from '../../records/source.ts'
import type { System } from '../../records/system.ts'
import type { PlaceId } from '../../rules/pack.ts'
import { accountNames } from '../../store/accounts.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type Decision, decisionsOn } from '../../store/decisions.ts'
import { type ChangeNoticed, changesOn } from '../../store/discrepancy-changes.ts'
import { shapesOf } from '../../store/document-pages.ts'
import type { PermitOnFile } from '../../store/permits.ts'
import { type Photo, photosOfInspections } from '../../store/photos.ts'
import {
  newestReconciliation,
  type ReconciliationInList,
  reconciliationsOf,
  type StoredReconciliation,
} from '../../store/reconciliations.ts'
import type { OperationContext } from '../context.ts'
import type { FindingsRead } from '../findings/read-findings.ts'
import { fullAnswerFor } from '../reconciliation/full-answer.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import type { Answer } from '../refusal.ts'
import { type ParcelRead, readParcel } from './read-parcel.ts'

/** A parcel with all that happened to it, as its reader may see it. */
export type ParcelFileRead = ParcelRead & {
  /** The newest; null where there is none, or none that the reader may see. */
  readonly reconciliation: StoredReconciliation | null
  /** The answer of the newest with its as-built and its working. */
  readonly result: Reconciliation | null
  /** Where there is none: what the record says by itself, with no inspection. */
  readonly record: RecordAlone | null
  /** The inspection that it was made with. */
  readonly inspection: FindingsRead | null
  /** Of the inspections that were submitted and the reader may see, in the order in which they came. */
  readonly photos: readonly Photo[]
  /** Newest first. */
  readonly reconciliations: readonly ReconciliationInList[]
  readonly changes: readonly ChangeNoticed[]
  /** Oldest first, the superseded ones too. */
  readonly decisions: readonly Decision[]
  /** What the accounts are called that typed, confirmed or decided something; those the reader may know. */
  readonly names: ReadonlyMap<string, string>
  /** Height against width of the scanned pages that values were read from, by `<document>/<page>`; for a reviewer. */
  readonly pageShapes: ReadonlyMap<string, number>
}

/** The record compared with the rules and nothing else; made for one reader, and not stored. */
export type RecordAlone = { readonly result: Reconciliation; readonly county: PlaceId }

/** Past this many the oldest re-runs are left out of the history. */
const MOST_RECONCILIATIONS = 200

export const readParcelFile = (
  context: OperationContext,
  actor: Person,
  asked: string,
  askedSystem?: string,
): Promise<Answer<ParcelFileRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const read = await readParcel({ ...context, database: within }, actor, asked, askedSystem)
    if (!read.ok) return read
    const { file } = read.value
    invariant(file, 'the file of a parcel is not read for an agent')
    const { system } = file
    const newest = await newestReconciliation(tx, actor.county, system.id)
    const history = await historyOf(tx, actor.county, system.id)
    const accounts = [...history.decisions.map(({ decidedBy }) => decidedBy), ...readersOf(read.value)]
    return ok({
      ...read.value,
      reconciliation: newest ?? null,
      result: newest ? await fullAnswerFor(within, actor, newest) : null,
      record: newest ? null : await recordAlone(context, within, actor, system),
      inspection: file.findings.find(({ id }) => id === newest?.findings) ?? null,
      photos: await photosOfInspections(tx, actor.county, handedIn(read.value)),
      ...history,
      names: await accountNames(tx, accounts.filter(isId)),
      pageShapes: await pageShapes(tx, actor.county, file.permits),
    })
  })

/** The whole file, with reviewers' corrections in it, as the inspection brief has it. */
const recordAlone = (
  context: OperationContext,
  within: OperationContext['database'],
  actor: Person,
  system: System,
): Promise<RecordAlone | null> =>
  transact(within, asService(actor), async (service) => {
    const { input } = await gatherInput(service, context, actor.county, system)
    if (input.permits.length === 0) return null
    return { result: reconcile({ ...input, findings: null }), county: input.county }
  })

const handedIn = ({ file }: ParcelRead): readonly string[] =>
  (file?.findings ?? []).filter(({ state }) => state !== 'draft').map(({ id }) => id)

async function historyOf(tx: Tx, county: string, system: string) {
  const [reconciliations, changes, decisions] = await Promise.all([
    reconciliationsOf(tx, county, system, undefined, MOST_RECONCILIATIONS),
    changesOn(tx, county, system),
    decisionsOn(tx, county, system),
  ])
  return { reconciliations, changes, decisions }
}

async function pageShapes(
  tx: Tx,
  county: string,
  permits: readonly PermitOnFile[],
): Promise<ReadonlyMap<string, number>> {
  const sources = permits.flatMap((permit) => Object.values(permit.sources))
  const documents = new Set(sources.flatMap((it) => (it.kind === 'document' ? [it.document] : [])))
  const shapes = new Map<string, number>()
  for (const document of documents) {
    for (const { number, widthPt, heightPt } of await shapesOf(tx, county, document)) {
      shapes.set(`${document}/${number}`, heightPt / widthPt)
    }
  }
  return shapes
}

/** Whoever typed or confirmed a value of the file. */
const readersOf = ({ file }: ParcelRead): readonly string[] =>
  (file?.permits ?? []).flatMap(({ sources }) => Object.values(sources).flatMap(accountOf))

function accountOf(source: Source): readonly string[] {
  if (source.kind === 'document') return [source.confirmedBy]
  return source.kind === 'imported' ? [] : [source.by]
}

/** An import or a story may have named someone in words. */
const isId = (by: string): boolean => /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(by)
