import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { confirmTranscription } from '../../../operations/documents/confirm-transcription.ts'
import { listDocuments, readDocumentTaken } from '../../../operations/documents/read-document.ts'
import { takeInDocument } from '../../../operations/documents/take-in-document.ts'
import { DOCUMENT_STATES } from '../../../store/documents.ts'
import { tagRevision, versionIfSent } from '../../plugins/entity-tag.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { id } from '../shapes/basics.ts'
import { countyPath, idPath } from '../shapes/paths.ts'
import { document, documentInList, presentDocument, presentDocumentInList } from './shapes.ts'
import { permitsConfirmed, presentTranscribed, transcribed, transcriptionBody } from './transcription.ts'
import { takeUpload, uploadForm } from './upload.ts'

const tags = ['Documents']

export const documents: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/documents',
    {
      config: { access: ['reviewer'], idempotent: true },
      preValidation: takeUpload,
      schema: {
        summary: 'Upload a document',
        description:
          'A PDF, kept unchanged. It is read in the background: the answer names the job. What cannot be read ' +
          'automatically is set aside with the reason, and kept. The same file twice is a 409, unless the stored copy was ' +
          'damaged: then it is replaced.',
        tags,
        operationId: 'takeInDocument',
        consumes: ['multipart/form-data'],
        params: countyPath,
        body: uploadForm,
        response: { 202: z.object({ document: documentInList, job: id }) },
      },
    },
    async ({ context, actor, body: { file, parcel } }, reply) => {
      const { hash, bytes, healed, mediaType, fileName } = file
      const paper = {
        kept: { hash, bytes, healed: healed === true },
        mediaType,
        fileName,
        parcel: parcel ?? null,
      }
      const taken = answered(await takeInDocument(context, actor, paper))
      reply.code(202).header('location', `/v1/counties/${actor.county}/jobs/${taken.job}`)
      return { document: presentDocumentInList(taken.document), job: taken.job }
    },
  )

  app.get(
    '/counties/:county/documents',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'The uploaded documents, in the order they came',
        tags,
        operationId: 'listDocuments',
        params: countyPath,
        querystring: z.object({
          ...pageQuery,
          state: z
            .enum(DOCUMENT_STATES)
            .optional()
            .meta({ examples: ['proposed'] }),
        }),
        response: { 200: pageOf(documentInList) },
      },
    },
    async (request, reply) => {
      const { context, actor, query } = request
      const after = cursorFrom(request, z.guid())
      const rows = await listDocuments(context, actor, query.state, after, query.limit + 1)
      return pageFrom(request, reply, rows, (row) => row.id, presentDocumentInList)
    },
  )

  app.get(
    '/counties/:county/documents/:id',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'A document: its state, its text and the values read from it',
        tags,
        operationId: 'readDocument',
        params: idPath,
        response: { 200: document },
      },
    },
    async ({ context, actor, params }, reply) => {
      const read = answered(await readDocumentTaken(context, actor, params.id))
      tagRevision(reply, read.document.revision)
      return presentDocument(read)
    },
  )

  app.post(
    '/counties/:county/documents/:id/transcription',
    {
      config: { access: ['reviewer'], idempotent: true },
      schema: {
        summary: 'Confirm or correct what was read: the permits now exist',
        description:
          'One document may contain many permits; all are made or none. Their parcels are reconciled in the same step. ' +
          'With If-Match, only the version that was read is confirmed.',
        tags,
        operationId: 'confirmTranscription',
        params: idPath,
        body: transcriptionBody,
        response: { 201: transcribed },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body, sentBody } = request
      const version = versionIfSent(request)
      const permits = permitsConfirmed(body)
      const asked = { document: params.id, version, permits, more: body.more ?? false, body: sentBody }
      const made = answered(await confirmTranscription(context, actor, asked))
      reply.code(201).header('location', `/v1/counties/${actor.county}/documents/${params.id}`)
      return presentTranscribed(made)
    },
  )
}
