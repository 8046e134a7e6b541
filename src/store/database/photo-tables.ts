import type { ColumnType } from 'kysely'

export type PhotoTable = {
  county: string
  id: string
  findings: string
  component: string | null
  content_hash: string
  media_type: 'image/jpeg' | 'image/png' | 'image/webp'
  bytes: number
  shown_hash: string
  small_hash: string | null
  printed_hash: string | null
  width: number
  height: number
  orientation: number
  taken_at: string | null
  lat: number | null
  lon: number | null
  radius_ft: number | null
  added_by: string
  added_at: ColumnType<Date, Date | undefined, never>
}
