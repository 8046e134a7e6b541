import type { ColumnType, Generated } from 'kysely'
import type { Instant, Json } from './column.ts'

export type TaughtFormTables = {
  readonly taught_form: TaughtFormTable
  readonly taught_by: TaughtByTable
  readonly form_witness: FormWitnessTable
  readonly reading_tally: ReadingTallyTable
}

type TaughtFormTable = {
  county: string
  id: string
  name: string
  state: 'proposed' | 'in-force' | 'withdrawn'
  taught: Json
  shown_on: string | null
  shown_pages: ColumnType<number[], number[], number[]>
  revision: Generated<number>
  made_at: Instant
  changed_at: Instant
  changed_by: string | null
}

type TaughtByTable = {
  county: string
  transcription: string
  permit: number
  form: string
  document: string
}

type FormWitnessTable = {
  county: string
  transcription: string
  permit: number
  form: string
  ask: string
  kind: string
  agrees: boolean
}

type ReadingTallyTable = {
  county: string
  transcription: string
  witness: 'text' | 'alike' | 'alone'
  step: number
  ask: string
  confirmed: number
  changed: number
}
