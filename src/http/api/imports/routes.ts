import { Readable } from 'node:stream'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { changeMapping } from '../../../operations/imports/change-mapping.ts'
import {
  listImports,
  listRejections,
  readImport,
  rejectedRows,
} from '../../../operations/imports/read-import.ts'
import { startImport } from '../../../operations/imports/start-import.ts'
import { takeInFile } from '../../../operations/imports/take-in-file.ts'
import { requireVersion, tagRevision } from '../../plugins/entity-tag.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { countyPath, idPath } from '../shapes/paths.ts'
import {
  importInList,
  importRead,
  mappingBody,
  presentImport,
  presentInList,
  presentRejection,
  rejection,
} from './shapes.ts'
import { formatOf, importForm, takeSentFile } from './upload.ts'

const tags = ['Imports']
const access = ['reviewer'] as const

export const imports: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/imports',
    {
      config: { access, idempotent: true },
      preValidation: takeSentFile,
      schema: {
        summary: 'Upload a file of permits, parcels or findings',
        description:
          'CSV with headings, or newline-delimited JSON. The answer suggests what each column means, from its heading ' +
          'and first rows, or from the last file with the same headings. Correct it, try it, run it. Nothing is ' +
          'imported yet.',
        tags,
        operationId: 'takeInImport',
        consumes: ['multipart/form-data'],
        params: countyPath,
        body: importForm,
        response: { 201: importRead },
      },
    },
    async ({ context, actor, body }, reply) => {
      const { kind, file } = body
      const { hash, bytes, fileName } = file
      const taken = answered(
        await takeInFile(context, actor, { kind, format: formatOf(body), hash, bytes, fileName }),
      )
      reply.code(201).header('location', `/v1/counties/${actor.county}/imports/${taken.id}`)
      tagRevision(reply, taken.revision)
      return presentImport(taken)
    },
  )

  app.get(
    '/counties/:county/imports',
    {
      config: { access },
      schema: {
        summary: 'The imports, newest first',
        tags,
        operationId: 'listImports',
        params: countyPath,
        querystring: z.object(pageQuery),
        response: { 200: pageOf(importInList) },
      },
    },
    async (request, reply) => {
      const { context, actor, query } = request
      const rows = await listImports(context, actor, cursorFrom(request, z.guid()), query.limit + 1)
      return pageFrom(request, reply, rows, (row) => row.id, presentInList)
    },
  )

  app.get(
    '/counties/:county/imports/:id',
    {
      config: { access },
      schema: {
        summary: 'An import: what its columns mean, and its progress',
        tags,
        operationId: 'readImport',
        params: idPath,
        response: { 200: importRead },
      },
    },
    async ({ context, actor, params }, reply) => {
      const read = answered(await readImport(context, actor, params.id))
      tagRevision(reply, read.revision)
      return presentImport(read)
    },
  )

  app.put(
    '/counties/:county/imports/:id/mapping',
    {
      config: { access, replaces: true },
      schema: {
        summary: 'Set what the columns mean',
        description: 'Kept, and used as the start for the next file with the same headings.',
        tags,
        operationId: 'mendImportMapping',
        params: idPath,
        body: mappingBody,
        response: { 200: importRead },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const version = requireVersion(request)
      const changed = answered(await changeMapping(context, actor, { id: params.id, version, mapping: body }))
      tagRevision(reply, changed.revision)
      return presentImport(changed)
    },
  )

  for (const [word, trial, summary, operationId] of [
    ['trial', true, 'Try an import: everything is checked and nothing is written', 'tryImport'],
    ['run', false, 'Run an import, or resume one that was interrupted', 'runImport'],
  ] as const) {
    app.post(
      `/counties/:county/imports/:id/${word}`,
      {
        config: { access },
        schema: {
          summary,
          description:
            'In the background; the answer names the job. A faulty row is rejected with its line, column, value and what ' +
            'is expected, and does not stop the others. A row that is already on file changes nothing.',
          tags,
          operationId,
          params: idPath,
          response: { 202: importRead },
        },
      },
      async ({ context, actor, params }, reply) => {
        const started = answered(await startImport(context, actor, params.id, trial))
        reply.code(202).header('location', `/v1/counties/${actor.county}/jobs/${started.job}`)
        tagRevision(reply, started.revision)
        return presentImport(started)
      },
    )
  }

  app.get(
    '/counties/:county/imports/:id/rejections',
    {
      config: { access },
      schema: {
        summary: 'The rejected rows, each with every fault',
        tags,
        operationId: 'listImportRejections',
        params: idPath,
        querystring: z.object(pageQuery),
        response: { 200: pageOf(rejection) },
      },
    },
    async (request, reply) => {
      const { context, actor, params, query } = request
      const after = cursorFrom(request, z.int().nonnegative()) ?? 0
      const rows = answered(
        await listRejections(context, actor, { id: params.id, after, most: query.limit + 1 }),
      )
      return pageFrom(request, reply, rows, (row) => row.line, presentRejection)
    },
  )

  app.get(
    '/counties/:county/imports/:id/rejected',
    {
      config: { access },
      schema: {
        summary: 'The rejected rows, as a file to fix and upload again',
        description:
          'In its original format, with two more columns (`line` and `to fix`) that are skipped when it is uploaded again.',
        tags,
        operationId: 'readRejectedRows',
        params: idPath,
        produces: ['text/csv', 'application/x-ndjson'],
      },
    },
    async ({ context, actor, params }, reply) => {
      const it = answered(await readImport(context, actor, params.id))
      const [type, ending] =
        it.format === 'csv' ? ['text/csv; charset=utf-8', 'csv'] : ['application/x-ndjson', 'ndjson']
      reply.type(type).header('content-disposition', `attachment; filename="rejected-rows.${ending}"`)
      return reply.send(Readable.from(rejectedRows(context, actor, it), { objectMode: false }))
    },
  )
}
