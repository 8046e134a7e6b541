import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { addSystem, changeSystem } from '../../../operations/systems/change-system.ts'
import { listSystems, readSystem } from '../../../operations/systems/read-systems.ts'
import { requireVersion, tagRevision } from '../../plugins/entity-tag.ts'
import { answered } from '../answer.ts'
import { consequence, presentConsequence } from '../shapes/changes.ts'
import { idPath, parcelPath } from '../shapes/paths.ts'
import { presentSystem, system } from '../shapes/system.ts'
import { entryOf, presentHistory, systemBody, systemHistory } from './shapes.ts'

const tags = ['Systems']
const written = z.object({
  system,
  consequence: consequence.nullable().meta({ description: 'Null where it is no system any more' }),
})

export const systems: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel/systems',
    {
      config: { access: ['reviewer', 'firm'] },
      schema: {
        summary: 'The septic systems that serve a parcel or lie on it',
        description: 'Its own comes first. A parcel of which nothing was said has just that one.',
        tags,
        operationId: 'listSystems',
        params: parcelPath,
        response: { 200: z.object({ items: z.array(system) }) },
      },
    },
    async ({ context, actor, params }) => {
      const all = answered(await listSystems(context, actor, params.parcel))
      return { items: all.map((it) => presentSystem(it, all)) }
    },
  )

  app.post(
    '/counties/:county/parcels/:parcel/systems',
    {
      config: { access: ['reviewer'], idempotent: true },
      schema: {
        summary: 'Say that a parcel has another system',
        description:
          'Its permits and inspections will lie in this parcel’s file. Nothing moves into it by itself: correct a permit to ' +
          'say that it built this system. Every parcel that it serves or lies on is reconciled in the same step.',
        tags,
        operationId: 'addSystem',
        params: parcelPath,
        body: systemBody,
        response: { 201: written },
      },
    },
    async ({ context, actor, params, body }, reply) => {
      const made = answered(await addSystem(context, actor, params.parcel, entryOf(body)))
      reply.code(201).header('location', `/v1/counties/${actor.county}/systems/${made.system.id}`)
      tagRevision(reply, made.system.revision)
      return {
        system: presentSystem(made.system),
        consequence: made.reconciled && presentConsequence(made.reconciled),
      }
    },
  )

  app.get(
    '/counties/:county/systems/:id',
    {
      config: { access: ['reviewer', 'firm'] },
      schema: {
        summary: 'A system, with its history for a reviewer',
        description: 'A parcel’s own system has the parcel’s id.',
        tags,
        operationId: 'readSystem',
        params: idPath,
        response: { 200: z.object({ system, history: systemHistory }) },
      },
    },
    async ({ context, actor, params }, reply) => {
      const read = answered(await readSystem(context, actor, params.id))
      tagRevision(reply, read.system.revision)
      return { system: presentSystem(read.system), history: read.history.map(presentHistory) }
    },
  )

  app.put(
    '/counties/:county/systems/:id',
    {
      config: { access: ['reviewer'], replaces: true },
      schema: {
        summary: 'Say what a system serves and where it lies',
        description:
          'Replaces all that was said, with a reason; each revision is kept. Without any parcel it is no system any more: ' +
          'that needs its permits and inspections elsewhere, and every parcel keeps one system.',
        tags,
        operationId: 'changeSystem',
        params: idPath,
        body: systemBody,
        response: { 200: written },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const version = requireVersion(request)
      const changed = answered(
        await changeSystem(context, actor, { id: params.id, version, entry: entryOf(body) }),
      )
      tagRevision(reply, changed.system.revision)
      return {
        system: presentSystem(changed.system),
        consequence: changed.reconciled && presentConsequence(changed.reconciled),
      }
    },
  )
}
