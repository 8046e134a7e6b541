import type { ColumnType, Generated } from 'kysely'
import type { GeneratedInstant, Instant, Json, MaybeInstant } from './column.ts'

/** Who may use the service; the tables that are not a county's own. */
export type AccessTables = {
  readonly county: CountyTable
  readonly organization: OrganizationTable
  readonly admission: AdmissionTable
  readonly account: AccountTable
  readonly access_token: AccessTokenTable
  readonly sign_in: SignInTable
  readonly session: SessionTable
  readonly invitation: InvitationTable
  readonly second_step: SecondStepTable
  readonly recovery_code: RecoveryCodeTable
  readonly outside_identity: OutsideIdentityTable
  readonly throttle: ThrottleTable
  readonly access_event: AccessEventTable
}

type CountyTable = {
  id: string
  name: string
  rule_pack: string
  parcel_format: Json
  keeps_names: Generated<boolean>
  revision: Generated<number>
  created_at: GeneratedInstant
}

type OrganizationTable = {
  id: string
  kind: 'county' | 'firm' | 'agent'
  name: string
  second_step: Generated<'offered' | 'required'>
  created_at: GeneratedInstant
}

type AdmissionTable = {
  county: string
  organization: string
  admitted_by: string | null
  admitted_at: GeneratedInstant
  withdrawn_at: MaybeInstant
}

type AccountTable = {
  id: string
  organization: string
  label: string
  role: 'firm' | 'reviewer' | 'agent'
  administers: Generated<boolean>
  suspended_at: MaybeInstant
  erased_at: MaybeInstant
  created_at: GeneratedInstant
}

type AccessTokenTable = {
  id: string
  account: string
  name: string
  hash: Buffer
  counties: string[]
  writes: Generated<string[]>
  manages: Generated<boolean>
  issued_by: string | null
  created_at: GeneratedInstant
  expires_at: MaybeInstant
  revoked_at: MaybeInstant
  last_used_at: MaybeInstant
}

type SignInTable = {
  account: string
  name: string
  password_hash: string | null
  changed_at: GeneratedInstant
}

export type SessionStage = 'full' | 'second-step' | 'set-up'

type SessionTable = {
  hash: Buffer
  account: string
  id: Generated<string>
  stage: Generated<SessionStage>
  /** A length of time as PostgreSQL writes it, as `4 hours`. */
  idle: ColumnType<unknown, string | undefined, string>
  browser: string | null
  begun_at: GeneratedInstant
  last_used_at: GeneratedInstant
  ends_at: Instant
}

type InvitationTable = {
  id: string
  account: string
  hash: Buffer
  made_by: string | null
  made_at: Instant
  expires_at: Instant
  used_at: MaybeInstant
}

type SecondStepTable = {
  account: string
  sealed_secret: Buffer
  confirmed_at: MaybeInstant
  last_step: Generated<number>
}

type RecoveryCodeTable = { account: string; hash: Buffer; used_at: MaybeInstant }

type OutsideIdentityTable = { issuer: string; subject: string; account: string; bound_at: Instant }

type ThrottleTable = { key: Buffer; tries: number; wait_until: MaybeInstant; changed_at: Instant }

type AccessEventTable = {
  id: string
  organization: string
  account: string | null
  kind: string
  made_by: string | null
  body: ColumnType<unknown, string | undefined, string>
  happened_at: Instant
}
