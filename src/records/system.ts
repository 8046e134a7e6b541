import type { SystemUse } from '../catalog/choices.ts'
import type { ReviewerText } from './whose.ts'

/** How a system stands to one parcel. */
export type SystemOnParcel = {
  readonly parcel: string
  readonly number: string
  readonly serves: boolean
  readonly liesOn: boolean
  /** What it serves there, where the county knows it otherwise than by a permit in that parcel's file. */
  readonly bedrooms: number | null
  readonly designFlowGpd: number | null
}

/** One system: what it is for, the parcels that it serves and those that it lies on. */
export type System = {
  /** Of a parcel's own system: the parcel's id. */
  readonly id: string
  /** In whose file its papers and inspections lie. */
  readonly parcel: string
  readonly use: SystemUse
  readonly label: ReviewerText | null
  /** The home parcel first. Empty where it is no system any more, or never was one. */
  readonly parcels: readonly SystemOnParcel[]
  /** 0 where nothing was said of it: it is the parcel's own, made by itself. */
  readonly revision: number
}

/** A parcel's own system, of which nobody has said anything. */
export const ownSystem = ({ id, number }: { readonly id: string; readonly number: string }): System => ({
  id,
  parcel: id,
  use: 'main',
  label: null,
  parcels: [{ parcel: id, number, serves: true, liesOn: true, bedrooms: null, designFlowGpd: null }],
  revision: 0,
})

export const servedBy = ({ parcels }: System): readonly SystemOnParcel[] =>
  parcels.filter(({ serves }) => serves)

/** It serves more than one parcel. */
export const isShared = (system: System): boolean => servedBy(system).length > 1

/** What one parcel puts on a system that serves several: by the permits of its file, or as the county says. */
export type Share = {
  /** The parcel's number. */
  readonly parcel: string
  /** Of the system's permits, those in that parcel's file. */
  readonly permits: readonly string[]
  readonly bedrooms: number | null
  readonly designFlowGpd: number | null
}
