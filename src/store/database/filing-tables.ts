import type { FilingAct } from '../../records/filing.ts'
import type { Instant } from './column.ts'

export type FilingTables = { readonly filing_change: FilingChangeTable }

type FilingChangeTable = {
  county: string
  id: string
  permit: string
  revision: number
  act: FilingAct
  reason: string
  from_parcel: string
  to_parcel: string
  other: string | null
  changed_by: string
  changed_at: Instant
}
