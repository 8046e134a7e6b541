import {
  type ActionCount,
  type AgeCount,
  type DecadeCount,
  decisionsByAction,
  type KindCount,
  openByAge,
  parcelsByDecade,
  standingByKind,
} from '../../store/county-figures.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { OperationContext } from '../context.ts'

export type CountyFigures = {
  readonly at: Date
  readonly decades: readonly DecadeCount[]
  readonly kinds: readonly KindCount[]
  readonly decisions: readonly ActionCount[]
  readonly ages: readonly AgeCount[]
}

/** How the whole county stands: counts, never a parcel. */
export const readCountyFigures = (
  { database, clock }: Pick<OperationContext, 'database' | 'clock'>,
  actor: Person,
): Promise<CountyFigures> =>
  transact(database, actor, async (tx) => {
    const at = clock()
    const [decades, kinds, decisions, ages] = await Promise.all([
      parcelsByDecade(tx, actor.county),
      standingByKind(tx, actor.county),
      decisionsByAction(tx, actor.county),
      openByAge(tx, actor.county, at),
    ])
    return { at, decades, kinds, decisions, ages }
  })
