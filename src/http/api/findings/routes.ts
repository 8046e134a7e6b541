import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { amendFindings } from '../../../operations/findings/amend-findings.ts'
import { changeFindings } from '../../../operations/findings/change-findings.ts'
import { draftFindings } from '../../../operations/findings/draft-findings.ts'
import { listFindings, readFindings } from '../../../operations/findings/read-findings.ts'
import { submitFindings } from '../../../operations/findings/submit-findings.ts'
import { requireVersion, tagRevision } from '../../plugins/entity-tag.ts'
import { answered } from '../answer.ts'
import { consequence, presentConsequence } from '../shapes/changes.ts'
import { findingsBody } from '../shapes/entries.ts'
import { idPath, parcelPath } from '../shapes/paths.ts'
import { systemQuery } from '../shapes/system.ts'
import { findings, presentFindings } from './shapes.ts'

const tags = ['Findings']
const placeOf = (county: string, id: string): string => `/v1/counties/${county}/findings/${id}`

export const findingsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/parcels/:parcel/findings',
    {
      config: { access: ['firm'], idempotent: true },
      schema: {
        summary: 'Start the findings of an inspection',
        description:
          'A draft. Only the firm sees it and can change it, until it is submitted. Where the parcel has several systems, ' +
          '`system` says which one is inspected.',
        tags,
        operationId: 'draftFindings',
        params: parcelPath,
        querystring: systemQuery,
        body: findingsBody,
        response: { 201: findings },
      },
    },
    async ({ context, actor, params, query, body }, reply) => {
      const draft = answered(await draftFindings(context, actor, params.parcel, body, query.system))
      tagRevision(reply.code(201).header('location', placeOf(actor.county, draft.id)), draft.revision)
      return presentFindings(draft)
    },
  )

  app.get(
    '/counties/:county/parcels/:parcel/findings',
    {
      config: { access: ['firm', 'reviewer'] },
      schema: {
        summary: 'The findings on a parcel, newest inspection first',
        description:
          'Of all its systems. A firm sees its own, with drafts; a reviewer sees all that are submitted.',
        tags,
        operationId: 'listFindings',
        params: parcelPath,
        response: { 200: z.object({ items: z.array(findings) }) },
      },
    },
    async ({ context, actor, params }) => {
      const all = answered(await listFindings(context, actor, params.parcel))
      return { items: all.map(presentFindings) }
    },
  )

  app.get(
    '/counties/:county/findings/:id',
    {
      config: { access: ['firm', 'reviewer'] },
      schema: {
        summary: 'Findings',
        tags,
        operationId: 'readFindings',
        params: idPath,
        response: { 200: findings },
      },
    },
    async ({ context, actor, params }, reply) => {
      const read = answered(await readFindings(context, actor, params.id))
      // Being amended changes how submitted findings are shown, not their revision.
      if (read.state === 'draft') tagRevision(reply, read.revision)
      return presentFindings(read)
    },
  )

  app.put(
    '/counties/:county/findings/:id',
    {
      config: { access: ['firm'], replaces: true },
      schema: {
        summary: 'Change a draft',
        description: 'Replaces all of it. Submitted findings cannot change; amend them instead (409).',
        tags,
        operationId: 'changeFindings',
        params: idPath,
        body: findingsBody,
        response: { 200: findings },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const version = requireVersion(request)
      const changed = answered(await changeFindings(context, actor, { id: params.id, version, record: body }))
      tagRevision(reply, changed.revision)
      return presentFindings(changed)
    },
  )

  app.post(
    '/counties/:county/findings/:id/submission',
    {
      config: { access: ['firm'], idempotent: true },
      schema: {
        summary: 'Submit findings',
        description:
          'Reviewers can see them, and they can no longer change. The parcel is reconciled in the same step. With ' +
          'If-Match, only the version that was read is submitted.',
        tags,
        operationId: 'submitFindings',
        params: idPath,
        response: { 200: z.object({ findings, consequence }) },
      },
    },
    async (request) => {
      const { context, actor, params, headers } = request
      const version = headers['if-match'] === undefined ? undefined : requireVersion(request)
      const submitted = answered(await submitFindings(context, actor, params.id, version))
      return {
        findings: presentFindings(submitted.findings),
        consequence: presentConsequence(submitted.reconciled),
      }
    },
  )

  app.post(
    '/counties/:county/findings/:id/amendment',
    {
      config: { access: ['firm'], idempotent: true },
      schema: {
        summary: 'Amend submitted findings',
        description: 'Starts a full draft copy that replaces these findings once it is submitted.',
        tags,
        operationId: 'amendFindings',
        params: idPath,
        body: findingsBody,
        response: { 201: findings },
      },
    },
    async ({ context, actor, params, body }, reply) => {
      const draft = answered(await amendFindings(context, actor, params.id, body))
      tagRevision(reply.code(201).header('location', placeOf(actor.county, draft.id)), draft.revision)
      return presentFindings(draft)
    },
  )
}
