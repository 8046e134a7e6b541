import type { Generated } from 'kysely'
import type { GeneratedInstant, Json, MaybeInstant } from './column.ts'

/** Who may use the service; the tables that are not a county's own. */

export type CountyTable = {
  id: string
  name: string
  rule_pack: string
  parcel_format: Json
  revision: Generated<number>
  created_at: GeneratedInstant
}

export type OrganisationTable = {
  id: string
  kind: 'county' | 'firm' | 'agent'
  name: string
  created_at: GeneratedInstant
}

export type AccountTable = {
  id: string
  organisation: string
  label: string
  role: 'firm' | 'reviewer' | 'agent'
  suspended_at: MaybeInstant
  created_at: GeneratedInstant
}

export type AccessTokenTable = {
  id: string
  account: string
  name: string
  hash: Buffer
  counties: string[]
  created_at: GeneratedInstant
  expires_at: MaybeInstant
  revoked_at: MaybeInstant
  last_used_at: MaybeInstant
}
