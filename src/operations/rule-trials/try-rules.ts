import { invariant } from '../../base/invariant.ts'
import { dayOf } from '../../base/plain-date.ts'
import { breathing } from '../../jobs/breathe.ts'
import type { JobRun } from '../../jobs/queue.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { reconcile } from '../../reconcile/reconcile.ts'
import type { RuleBook } from '../../rules/book.ts'
import type { ParameterName } from '../../rules/parameters.ts'
import { countyById } from '../../store/counties.ts'
import { asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { onFileOf } from '../../store/many-parcels.ts'
import { countOnFile, parcelsOnFile } from '../../store/parcels-on-file.ts'
import { outOfTheOrdinary, systemsOf } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import { inputAmong } from '../reruns/gather-many.ts'
import { notingUse, parametersChanged } from '../reruns/parameters-changed.ts'
import { compareAnswers } from './compare-answers.ts'
import { proposedBook } from './proposed-book.ts'
import { groupsOf, type ParcelChanged, type TrialTally, tallying } from './tally.ts'

const AT_ONCE = 200

export type TrialResult = TrialTally & {
  readonly pack: string
  readonly asOf: string
  /** What the proposed rules say otherwise for this county. */
  readonly parameters: readonly ParameterName[]
}

/**
 * Every parcel of the county that has something on file, under the rules in force and under the proposed ones, as they
 * are today. Nothing is stored but what it came to. Parcels whose answers ask for none of the rules that differ have one
 * answer, and it is computed once.
 */
export async function tryRules(
  context: OperationContext,
  { actor, data, report, signal }: JobRun<'try-rules'>,
): Promise<TrialResult> {
  const service = asService(actor)
  const proposed = await proposedBook(data.yaml, actor.county)
  invariant(proposed.ok, 'a pack that was sound when it was sent')
  const [county, total] = await transact(context.database, service, async (tx) => [
    await countyById(tx, actor.county),
    await countOnFile(tx, actor.county),
  ])
  invariant(county, `a trial of rules in ${actor.county}, which is no county`)
  const asked = { place: county.place, asOf: dayOf(context.clock()), book: context.book }
  const { pack, book } = proposed.value
  const changed = parametersChanged(context.book, book, county.place)
  const tallied = tallying()
  const breathe = breathing()
  for (let after: string | null = null; ; ) {
    signal.throwIfAborted()
    const last: string | null = after
    const [parcels, inputs] = await transact(context.database, service, async (tx) => {
      const some = await parcelsOnFile(tx, actor.county, last, AT_ONCE)
      return [some, await inputsOf(tx, context, actor.county, some, asked)] as const
    })
    for (const { id, number, input } of inputs) {
      await breathe()
      tallied.add({ parcel: id, number, ...both(input, book, changed) })
    }
    const counts = tallied.counts()
    await report({ done: counts.looked, total, says: `${counts.changed} would change so far` })
    if (parcels.length < AT_ONCE) break
    after = parcels.at(-1)!.id
  }
  return { pack, asOf: asked.asOf, parameters: [...changed].sort(), ...tallied.tally() }
}

type Asked = Parameters<typeof inputAmong>[2]

/** One for each parcel, read together; of those with more than a system of their own, one for each that is filed with them. */
async function inputsOf(
  tx: Tx,
  context: OperationContext,
  county: string,
  parcels: readonly { readonly id: string; readonly number: string }[],
  asked: Asked,
): Promise<readonly { readonly id: string; readonly number: string; readonly input: ReconcileInput }[]> {
  const ids = parcels.map(({ id }) => id)
  const others = await outOfTheOrdinary(tx, county, ids)
  const onFile = await onFileOf(tx, county, ids)
  const inputs = []
  for (const it of parcels) {
    if (!others.has(it.id)) inputs.push({ ...it, input: inputAmong(onFile, it.id, asked) })
    else
      for (const system of await systemsOf(tx, county, it.id))
        if (system.parcel === it.id)
          inputs.push({ ...it, input: (await gatherInput(tx, context, county, system)).input })
  }
  return inputs
}

function both(
  input: ReconcileInput,
  proposed: RuleBook,
  changed: ReadonlySet<ParameterName>,
): Pick<ParcelChanged, 'decade' | 'bedrooms' | 'changes'> {
  const { book, used } = notingUse(input.book, input.county)
  const now = reconcile({ ...input, book })
  const groups = groupsOf(input, now)
  if (![...changed].some((name) => used.has(name))) return { ...groups, changes: [] }
  return { ...groups, changes: compareAnswers(now, reconcile({ ...input, book: proposed })) }
}
