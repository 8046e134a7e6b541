import type { Generated } from 'kysely'
import type { GeneratedInstant, Instant, Json } from './column.ts'

/** The tables of migrations/0018. */
export type SystemTables = {
  readonly system: SystemTable
  readonly system_parcel: SystemParcelTable
  readonly system_change: SystemChangeTable
}

type SystemTable = {
  county: string
  id: string
  parcel: string
  use: string
  label: string | null
  revision: Generated<number>
  created_at: GeneratedInstant
}

type SystemParcelTable = {
  county: string
  system: string
  parcel: string
  serves: boolean
  lies_on: boolean
  bedrooms: number | null
  design_flow_gpd: number | null
}

type SystemChangeTable = {
  county: string
  system: string
  revision: number
  body: Json
  reason: string
  changed_by: string
  changed_at: Instant
}
