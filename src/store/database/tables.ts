import type { ColumnType, Generated, GeneratedAlways } from 'kysely'
import type { AccessTables } from './access-tables.ts'
import type { BulkTables } from './bulk-tables.ts'
import type { Day, GeneratedInstant, Instant, Json, MaybeInstant } from './column.ts'
import type { FilingTables } from './filing-tables.ts'
import type { LetterTables } from './letter-tables.ts'
import type { PhotoTable } from './photo-tables.ts'
import type { SubscriptionTables } from './subscription-tables.ts'
import type { SystemTables } from './system-tables.ts'
import type { TaughtFormTables } from './taught-form-tables.ts'
import type { UpkeepTables } from './upkeep-tables.ts'

/** The tables as PostgreSQL has them, snake_case; the store maps them at its edge. Kept beside migrations/. */
export type Tables = {
  readonly parcel: ParcelTable
  readonly parcel_alias: ParcelAliasTable
  readonly parcel_status: ParcelStatusTable
  readonly street: StreetTable
  readonly document: DocumentTable
  readonly document_page: DocumentPageTable
  readonly transcription: TranscriptionTable
  readonly permit: PermitTable
  readonly permit_revision: PermitRevisionTable
  readonly findings: FindingsTable
  readonly findings_revision: FindingsRevisionTable
  readonly photo: PhotoTable
  readonly reconciliation: ReconciliationTable
  readonly discrepancy: DiscrepancyTable
  readonly discrepancy_change: DiscrepancyChangeTable
  readonly decision: DecisionTable
  readonly idempotency_key: IdempotencyKeyTable
  readonly job: JobTable
  readonly event: EventTable
  readonly rule_book: RuleBookTable
} & AccessTables &
  BulkTables &
  FilingTables &
  SubscriptionTables &
  TaughtFormTables &
  UpkeepTables &
  LetterTables &
  SystemTables

type ParcelTable = {
  county: string
  id: string
  number: string
  key: GeneratedAlways<string>
  loose_key: GeneratedAlways<string>
  address: string | null
  house_number: GeneratedAlways<number | null>
  street_key: GeneratedAlways<string | null>
  retired_on: Day | null
  revision: Generated<number>
  created_at: GeneratedInstant
}

type ParcelAliasTable = {
  county: string
  parcel: string
  number: string
  key: GeneratedAlways<string>
  loose_key: GeneratedAlways<string>
  kind: 'renumbered' | 'split' | 'merged'
  changed_on: Day | null
  note: string | null
}

type StreetTable = { county: string; key: string }

type ParcelStatusTable = {
  county: string
  parcel: string
  word: string
  good_until: Day | null
  derived_at: Instant
  body: Json
}

type DocumentTable = {
  county: string
  id: string
  parcel: string | null
  content_hash: string
  media_type: string
  file_name: string | null
  bytes: number
  pages: number | null
  state: 'received' | 'reading' | 'proposed' | 'confirmed' | 'set-aside' | 'failed'
  reason: string | null
  proposals: ColumnType<unknown, string | undefined, string>
  revision: Generated<number>
  received_by: string
  received_at: GeneratedInstant
}

type DocumentPageTable = {
  county: string
  document: string
  number: number
  width: number
  height: number
  text: string
  words: Json
}

type TranscriptionTable = {
  county: string
  id: string
  document: string
  body: Json
  confirmed_by: string
  confirmed_at: GeneratedInstant
}

type PermitTable = {
  county: string
  id: string
  parcel: string
  of_system: ColumnType<string | null, string | null | undefined, string | null>
  system: GeneratedAlways<string>
  number: string | null
  kind: 'new' | 'repair' | 'alteration' | 'abandonment'
  issued_on: Day | null
  approved_on: Day | null
  standing: 'void' | 'merged' | null
  merged_into: string | null
  record: Json
  revision: Generated<number>
  created_at: GeneratedInstant
  changed_at: GeneratedInstant
}

type PermitRevisionTable = {
  county: string
  permit: string
  revision: number
  record: Json
  record_hash: string
  reason: string | null
  transcription: string | null
  recorded_by: string
  recorded_at: GeneratedInstant
}

type FindingsTable = {
  county: string
  id: string
  parcel: string
  of_system: ColumnType<string | null, string | null | undefined, string | null>
  system: GeneratedAlways<string>
  organization: string
  state: 'draft' | 'submitted'
  inspected_on: Day | null
  record: Json
  revision: Generated<number>
  amends: string | null
  created_by: string
  created_at: GeneratedInstant
  changed_at: GeneratedInstant
  submitted_by: string | null
  submitted_at: MaybeInstant
}

type FindingsRevisionTable = {
  county: string
  findings: string
  revision: number
  record: Json
  record_hash: string
  recorded_by: string
  recorded_at: GeneratedInstant
}

type ReconciliationTable = {
  county: string
  id: string
  parcel: string
  of_system: ColumnType<string | null, string | null | undefined, string | null>
  system: GeneratedAlways<string>
  findings: string | null
  organization: string | null
  as_built_on: Day
  inputs: Json
  input_hash: string
  engine: string
  result: Json
  result_hash: string
  occasion: string
  made_at: GeneratedInstant
}

type DiscrepancyTable = {
  county: string
  id: string
  parcel: string
  of_system: ColumnType<string | null, string | null | undefined, string | null>
  system: GeneratedAlways<string>
  kind: string
  subject: string
  organization: string | null
  severity: 'action' | 'review' | 'note'
  severity_rank: GeneratedAlways<number>
  state: 'open' | 'decided' | 'ground-moved' | 'vanished'
  evidence_hash: string
  reconciliation: string
  body: Json
  says: string
  decision: string | null
  raised_at: Instant
  changed_at: Instant
  revision: Generated<number>
}

type DiscrepancyChangeTable = {
  county: string
  id: string
  parcel: string
  discrepancy: string
  reconciliation: string
  change: 'appeared' | 'changed' | 'vanished' | 'returned'
  before_hash: string | null
  after_hash: string | null
  body: ColumnType<unknown, string | undefined, string>
  noticed_at: GeneratedInstant
}

type DecisionTable = {
  county: string
  id: string
  discrepancy: string
  parcel: string
  of_system: ColumnType<string | null, string | null | undefined, string | null>
  system: GeneratedAlways<string>
  action: string
  reason: string
  evidence_hash: string
  body: ColumnType<unknown, string | undefined, string>
  supersedes: string | null
  decided_by: string
  decided_at: GeneratedInstant
}

type IdempotencyKeyTable = {
  county: string
  account: string
  key: string
  request_hash: string
  status: number
  headers: Json<Readonly<Record<string, string>>>
  body: string
  answered_at: GeneratedInstant
}

type JobTable = {
  county: string
  id: string
  kind: string
  organization: string | null
  requested_by: string | null
  state: 'waiting' | 'running' | 'done' | 'failed'
  done: Generated<number>
  total: number | null
  says: string | null
  result: ColumnType<unknown, string | null | undefined, string | null>
  requested_at: GeneratedInstant
  changed_at: GeneratedInstant
}

type EventTable = {
  county: string
  id: string
  kind: string
  subject_kind: string
  subject: string
  parcel: string | null
  account: string | null
  organization: string | null
  role: string
  before_hash: string | null
  after_hash: string | null
  body: ColumnType<unknown, string | undefined, string>
  happened_at: GeneratedInstant
}

type RuleBookTable = {
  hash: string
  packs: string
  first_used_at: GeneratedInstant
}
