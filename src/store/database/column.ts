import type { ColumnType } from 'kysely'

/** A jsonb column: read as a value, written as JSON text (pg would write a bare array as a PostgreSQL array). */
export type Json<T = unknown> = ColumnType<T, string, string>
/** timestamptz: read as Date, written as Date or ISO 8601 text. */
export type Instant = ColumnType<Date, Date | string, Date | string>
export type MaybeInstant = ColumnType<Date | null, Date | string | null | undefined, Date | string | null>
export type GeneratedInstant = ColumnType<Date, Date | string | undefined, Date | string>
/** date: `YYYY-MM-DD`, never a Date, which would move with the time zone. */
export type Day = string
