import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { type ExportForm, exportCounty } from '../../../operations/exports/export-county.ts'
import type { Role } from '../../../store/database/actor.ts'
import type { ExportName } from '../../../store/exports/tables.ts'
import { countyPath } from '../shapes/paths.ts'
import { paced } from './pace.ts'
import { exportsUnderWay } from './under-way.ts'

const TYPES: { readonly [F in ExportForm]: string } = {
  csv: 'text/csv; charset=utf-8',
  ndjson: 'application/x-ndjson',
  geojson: 'application/geo+json',
}

/** What can be exported in which form to whom. A permit has no place of its own; only what was found has one. */
const EXPORTED: readonly {
  readonly what: ExportName
  readonly forms: readonly ExportForm[]
  readonly access: readonly Role[]
  readonly summary: string
}[] = [
  {
    what: 'parcels',
    forms: ['csv', 'ndjson', 'geojson'],
    access: ['reviewer'],
    summary: 'Every parcel with its status',
  },
  {
    what: 'discrepancies',
    forms: ['csv', 'ndjson', 'geojson'],
    access: ['reviewer', 'firm'],
    summary: 'Every difference that the caller may see',
  },
  { what: 'permits', forms: ['csv', 'ndjson'], access: ['reviewer'], summary: 'Every permit' },
]

const ABOUT: { readonly [F in ExportForm]: string } = {
  csv: 'With headings; no cell is one that a spreadsheet takes for a formula.',
  ndjson: 'One JSON object a line.',
  geojson:
    'RFC 7946. A position is known only where an inspection took a fix (of the tank, or of the component that a difference is ' +
    'about); everything else has a null geometry.',
}

export const exportRoutes: FastifyPluginAsyncZod = async (app) => {
  const underWay = exportsUnderWay()
  for (const { what, forms, access, summary } of EXPORTED) {
    for (const form of forms) {
      const withFields = what === 'permits' && form === 'csv'
      app.get(
        `/counties/:county/exports/${what}.${form}`,
        {
          config: { access },
          schema: {
            summary: `${summary}, as ${form === 'csv' ? 'CSV' : form === 'ndjson' ? 'NDJSON' : 'GeoJSON'}`,
            description: `As it is at this moment, streamed. ${ABOUT[form]}`,
            tags: ['Exports'],
            operationId: `export${what[0]!.toUpperCase()}${what.slice(1)}As${form[0]!.toUpperCase()}${form.slice(1)}`,
            produces: [TYPES[form].split(';')[0]!],
            params: countyPath,
            querystring: withFields
              ? z.object({
                  fields: z
                    .enum(['blds'])
                    .optional()
                    .meta({
                      description: 'In the fields of the Building and Land Development Specification',
                      examples: ['blds'],
                    }),
                })
              : z.object({}),
          },
        },
        async ({ context, actor, query, method }, reply) => {
          const { fields } = query as { readonly fields?: 'blds' }
          const asked = { what, form, blds: fields === 'blds' }
          reply
            .type(TYPES[form])
            .header('content-disposition', `attachment; filename="${actor.county}-${what}.${form}"`)
          // Whoever asks for the head alone keeps no connection of the database.
          if (method === 'HEAD') return reply.send('')
          const rows = await underWay(actor.organization, async () =>
            paced(await exportCounty(context, actor, asked)),
          )
          return reply.send(rows)
        },
      )
    }
  }
}
