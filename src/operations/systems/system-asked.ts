import { ok } from '../../base/result.ts'
import type { System } from '../../records/system.ts'
import type { Tx } from '../../store/database/database.ts'
import type { Parcel } from '../../store/parcels.ts'
import { systemsOf } from '../../store/systems.ts'
import { systemName } from '../../words/system.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { type Answer, invalid } from '../refusal.ts'
import { addressOf, apart, isNamed } from './system-address.ts'

export type SystemOnFile = {
  readonly parcel: Parcel
  readonly system: System
  /** All of the parcel's. */
  readonly systems: readonly System[]
}

/** Which of a parcel's systems is meant: the only one, or the one named. Where there are several, nobody guesses. */
export async function systemAsked(
  tx: Tx,
  county: string,
  askedParcel: string,
  named: string | undefined,
): Promise<Answer<SystemOnFile>> {
  const parcel = await parcelAsked(tx, county, askedParcel)
  if (!parcel.ok) return parcel
  const asked = named ?? apart(askedParcel).system ?? undefined
  const systems = await systemsOf(tx, county, parcel.value.id)
  const { number } = parcel.value
  const [only, ...others] = systems
  const system = asked === undefined ? others.length === 0 && only : systems.find((it) => isNamed(it, asked))
  if (system) return ok({ parcel: parcel.value, system, systems })
  const all = systems
    .map((it) => `${addressOf(number, it, systems)} (${systemName(it, systems)}, ${it.id})`)
    .join(', ')
  const message =
    asked === undefined
      ? `parcel ${number} has ${systems.length} systems: say which one with "system", or by the parcel as ${all}`
      : `is no system of parcel ${number}; it has ${all}`
  return invalid({ pointer: '/system', message })
}
