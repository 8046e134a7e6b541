import type { ParcelFileRead } from '../../../operations/parcels/read-parcel-file.ts'
import { addressOf } from '../../../operations/systems/system-address.ts'
import { isShared } from '../../../records/system.ts'
import { VOICES } from '../../../words/agent/status.ts'
import { systemName, systemReach } from '../../../words/system.ts'

/** One of a parcel's systems in the list at the head of its file. */
export type SystemLine = {
  /** The parcel's number, and which system where there are several, as an address has it. */
  readonly address: string
  readonly name: string
  /** Of the parcels that it serves and lies on; null for a parcel's own, of which nothing was said. */
  readonly reach: string | null
  readonly shared: boolean
  /** How it stands by itself; null where the parcel has just this one. */
  readonly standing: string | null
  /** Nobody has inspected it. */
  readonly unseen: boolean
  /** The file below is this one's. */
  readonly shown: boolean
}

/** In the order in which the status tells them: both have the parcel's own first, then by their ids. */
export function presentSystems({ parcel, file, status }: ParcelFileRead): readonly SystemLine[] {
  const systems = file?.systems ?? []
  return systems.map((system, at) => {
    const stands = status.systems?.[at]
    return {
      address: addressOf(parcel.number, system, systems),
      name: systemName(system, systems),
      reach: system.revision === 0 ? null : systemReach(system),
      shared: isShared(system),
      standing: stands ? VOICES.en.word[stands.word] : null,
      unseen: stands !== undefined && !stands.inspected,
      shown: system.id === file?.system.id,
    }
  })
}

/** What the pages about the file shown are asked for by. */
export const fileAddress = ({ parcel, file }: Pick<ParcelFileRead, 'parcel' | 'file'>): string =>
  file ? addressOf(parcel.number, file.system, file.systems) : parcel.number
