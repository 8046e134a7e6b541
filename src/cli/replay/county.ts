import { regather } from '../../operations/reconciliation/replay-reconciliation.ts'
import { serviceIn } from '../../store/database/actor.ts'
import type { Database } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { parcelsOnFile } from '../../store/parcels-on-file.ts'
import { newestReconciliation } from '../../store/reconciliations.ts'
import { systemsOf } from '../../store/systems.ts'
import { type Difference, difference } from './differences.ts'
import type { Version } from './version.ts'

export type CountyReplayed = {
  readonly compared: number
  /** Stored answers whose inputs are not all kept, or not as they were. */
  readonly lost: readonly string[]
  readonly differences: readonly Difference[]
}

const AT_ONCE = 100

/**
 * The newest stored answer of every system of a county, computed again by a version from the inputs and the rules that it
 * names. Without a version to hold it against, against what is stored; else against that version's answer.
 */
export async function replayCounty(
  database: Database,
  county: string,
  now: Version,
  before: Version | undefined,
): Promise<CountyReplayed> {
  const [lost, differences]: [string[], Difference[]] = [[], []]
  let compared = 0
  for (let after: string | null = null; ; ) {
    const last: string | null = after
    const parcels = await transact(database, serviceIn(county), async (tx) => {
      const some = await parcelsOnFile(tx, county, last, AT_ONCE)
      for (const { id, number } of some) {
        for (const system of await systemsOf(tx, county, id)) {
          const stored = system.parcel === id && (await newestReconciliation(tx, county, system.id))
          if (!stored) continue
          const { input, missing } = await regather(tx, county, stored)
          if (!input) {
            lost.push(`${number}: ${missing.join(', ')}`)
            continue
          }
          const { book, ...rest } = input
          const found = difference(
            number,
            before?.answer(rest, book) ?? stored.result,
            now.answer(rest, book),
          )
          compared += 1
          if (found) differences.push(found)
        }
      }
      return some
    })
    if (parcels.length < AT_ONCE) return { compared, lost, differences }
    after = parcels.at(-1)!.id
  }
}
