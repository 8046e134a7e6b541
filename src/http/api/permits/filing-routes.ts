import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { changeHowFiled } from '../../../operations/permits/change-filing.ts'
import { requireVersion, tagRevision } from '../../plugins/entity-tag.ts'
import { answered } from '../answer.ts'
import { idPath } from '../shapes/paths.ts'
import { filingChangeBody, filingConsequences, presentFilingConsequences } from './filing.ts'
import { permit, presentPermit } from './shapes.ts'

export const filingChanges: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/permits/:id/filing-changes',
    {
      config: { access: ['reviewer'], idempotent: true, replaces: true },
      schema: {
        summary: 'Move a permit to another parcel, void it, merge it into another, or undo one of these',
        description:
          'Nothing is deleted, and each change has a reason of a closed list. The parcels that it touches are reconciled in ' +
          'the same step. Decisions that stood on the permit are named and not undone; letters that rest on it are ' +
          'superseded, which whoever checks one is told.',
        tags: ['Permits'],
        operationId: 'changeHowFiled',
        params: idPath,
        body: filingChangeBody,
        response: { 201: filingConsequences.extend({ permit }) },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const version = requireVersion(request)
      const { note = null, ...asked } = body
      const changed = answered(
        await changeHowFiled(context, actor, {
          ...asked,
          id: params.id,
          version,
          note: note === null || note.trim() === '' ? null : note.trim(),
        }),
      )
      reply.code(201).header('location', `/v1/counties/${actor.county}/permits/${params.id}`)
      tagRevision(reply, changed.permit.revision)
      return { permit: presentPermit(changed.permit), ...presentFilingConsequences(changed) }
    },
  )
}
