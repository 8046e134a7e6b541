import type { ColumnType, Generated } from 'kysely'
import type { GeneratedInstant, Instant, MaybeInstant } from './column.ts'

export type SubscriptionTables = {
  readonly subscription: SubscriptionTable
  readonly delivery: DeliveryTable
}

type SubscriptionTable = {
  county: string
  id: string
  organization: string
  account: string
  address: string | null
  secret: Buffer | null
  parcel: string | null
  made_at: Instant
  ended_at: MaybeInstant
  ended_because: string | null
}

type DeliveryTable = {
  county: string
  id: string
  subscription: string
  parcel: string
  body: ColumnType<string, never, never>
  state: Generated<'waiting' | 'delivered' | 'dead'>
  tries: Generated<number>
  next_at: Instant
  says: string | null
  made_at: GeneratedInstant
  changed_at: GeneratedInstant
}
