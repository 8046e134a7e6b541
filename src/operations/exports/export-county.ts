import { Readable } from 'node:stream'
import type { Person } from '../../store/database/actor.ts'
import { csvQuery, featuresQuery, ndjsonQuery } from '../../store/exports/column.ts'
import { BLDS, EXPORT_TABLES, type ExportName } from '../../store/exports/tables.ts'
import type { OperationContext } from '../context.ts'

export const EXPORT_FORMS = ['csv', 'ndjson', 'geojson'] as const
export type ExportForm = (typeof EXPORT_FORMS)[number]

export type ExportAsked = {
  readonly what: ExportName
  readonly form: ExportForm
  /** Permits in the open fields of BLDS. */
  readonly blds: boolean
}

/**
 * What the asker may see of a county, as it is at this moment, as it comes out of the database. One statement, so one
 * state of things; the policies of the tables say which rows.
 */
export async function exportCounty(
  { database }: Pick<OperationContext, 'database'>,
  actor: Person,
  { what, form, blds }: ExportAsked,
): Promise<Readable> {
  const table = blds ? BLDS : EXPORT_TABLES[what]
  switch (form) {
    case 'csv':
      return database.copyOut(actor, csvQuery(table), 'csv')
    case 'ndjson':
      return database.copyOut(actor, ndjsonQuery(table), 'lines')
    case 'geojson':
      return collection(await database.copyOut(actor, featuresQuery(table), 'lines'))
  }
}

/** The features in the object that RFC 7946 wants around them; a reader that goes away takes the rows with it. */
function collection(features: Readable): Readable {
  async function* whole(): AsyncGenerator<Buffer | string> {
    yield '{"type":"FeatureCollection","features":[\n'
    yield* features as AsyncIterable<Buffer>
    yield ']}\n'
  }
  return Readable.from(whole(), { objectMode: false }).once('close', () => features.destroy())
}
