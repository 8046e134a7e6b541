import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { confirmTranscription } from '../../../operations/documents/confirm-transcription.ts'
import {
  listDocuments,
  readDocumentTaken,
  readProposals,
  readText,
} from '../../../operations/documents/read-document.ts'
import { takeInDocument } from '../../../operations/documents/take-in-document.ts'
import type { PageShape } from '../../../store/document-pages.ts'
import { DOCUMENT_STATES } from '../../../store/documents.ts'
import { tagRevision, versionIfSent } from '../../plugins/entity-tag.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { id } from '../shapes/basics.ts'
import { countyPath, idPath } from '../shapes/paths.ts'
import { presentProposal, proposal } from './proposals.ts'
import { document, documentInList, pageText, presentDocument, presentDocumentInList } from './shapes.ts'
import { permitsConfirmed, presentTranscribed, transcribed, transcriptionBody } from './transcription.ts'
import { takeUpload, uploadForm } from './upload.ts'

const tags = ['Documents']

/** Each is as long as a form: fewer at once than of other lists. */
const proposalLimit = z.coerce
  .number('write a whole number')
  .int('write a whole number')
  .min(1, 'at least 1')
  .max(50, 'at most 50')
  .default(20)
  .meta({ description: 'The most items to return', examples: [20] })

const presentText = ({
  number,
  ...it
}: PageShape & { readonly text: string }): z.output<typeof pageText> => ({
  page: number,
  ...it,
})

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

  app.get(
    '/counties/:county/documents/:id/text',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'What was read on the pages of a document',
        tags,
        operationId: 'readDocumentText',
        params: idPath,
        querystring: z.object(pageQuery),
        response: { 200: pageOf(pageText) },
      },
    },
    async (request, reply) => {
      const { context, actor, params, query } = request
      const after = cursorFrom(request, z.int().nonnegative()) ?? 0
      const rows = answered(await readText(context, actor, { id: params.id, after, most: query.limit + 1 }))
      return pageFrom(request, reply, rows, (row) => row.number, presentText)
    },
  )

  app.get(
    '/counties/:county/documents/:id/proposals',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'The permits found in a document, each with the values read',
        description: 'Proposals until a person confirms them.',
        tags,
        operationId: 'listProposals',
        params: idPath,
        querystring: z.object({ ...pageQuery, limit: proposalLimit }),
        response: { 200: pageOf(proposal) },
      },
    },
    async (request, reply) => {
      const { context, actor, params, query } = request
      const after = cursorFrom(request, z.int().nonnegative()) ?? -1
      const asked = { id: params.id, from: after + 1, most: query.limit + 1 }
      const rows = [...answered(await readProposals(context, actor, asked))]
      return pageFrom(request, reply, rows, ([place]) => place, presentProposal)
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
