import type { ColumnType, Generated } from 'kysely'
import type { Instant, Json, MaybeInstant } from './column.ts'

/** What many records at once need: imports, re-runs. */
export type BulkTables = {
  readonly rerun: RerunTable
  readonly rerun_parcel: RerunParcelTable
  readonly import_mapping: ImportMappingTable
  readonly import: ImportTable
  readonly import_rejection: ImportRejectionTable
}

type RerunTable = {
  county: string
  id: string
  cause: 'rules-changed' | 'engine-changed' | 'imported' | 'asked-for'
  state: 'gathering' | 'running' | 'paused' | 'done'
  revision: Generated<number>
  asked_by: string | null
  asked_at: Instant
  ended_at: MaybeInstant
}

type RerunParcelTable = {
  county: string
  rerun: string
  parcel: string
  outcome: 'unaffected' | 'same' | 'changed' | 'failed' | null
  says: string | null
}

type ImportMappingTable = {
  county: string
  kind: 'permits' | 'parcels' | 'findings'
  headings: string
  body: Json
  mended_by: string
  mended_at: Instant
}

type ImportTable = {
  county: string
  id: string
  kind: 'permits' | 'parcels' | 'findings'
  format: 'csv' | 'ndjson'
  content_hash: string
  bytes: number
  file_name: string | null
  head: Json
  mapping: Json
  state: 'waiting' | 'trying' | 'tried' | 'running' | 'done' | 'failed'
  reason: string | null
  job: string | null
  rerun: string | null
  rows_read: Generated<number>
  read_to_line: Generated<number>
  added: Generated<number>
  changed: Generated<number>
  unchanged: Generated<number>
  rejected: Generated<number>
  revision: Generated<number>
  made_by: string
  made_at: Instant
  ended_at: MaybeInstant
}

type ImportRejectionTable = {
  county: string
  import: string
  line: number
  cells: ColumnType<unknown, string, never>
  faults: ColumnType<unknown, string, never>
}
