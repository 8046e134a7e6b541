import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import {
  listReconciliations,
  readNewestReconciliation,
  readReconciliation,
} from '../../../operations/reconciliation/read-reconciliation.ts'
import { replayReconciliation } from '../../../operations/reconciliation/replay-reconciliation.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { hash, id } from '../shapes/basics.ts'
import { idPath, parcelPath } from '../shapes/paths.ts'
import { systemQuery } from '../shapes/system.ts'
import { presentInList, presentReconciliation, reconciliation, reconciliationInList } from './shapes.ts'

const tags = ['Reconciliations']
const access = ['reviewer', 'firm'] as const

const listKey = z.tuple([z.iso.datetime(), z.guid()])

const replay = z
  .object({
    reconciliation: id,
    engineThen: z.string(),
    engineNow: z.string(),
    missing: z.array(z.string()).meta({ description: 'Which of its inputs are no longer kept' }),
    resultHashThen: hash,
    resultHashNow: hash.nullable().meta({ description: 'Null where it cannot be redone' }),
    same: z.boolean(),
  })
  .meta({
    id: 'Replay',
    description: 'The same inputs computed again: whether the result is identical to the byte',
  })

export const reconciliations: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel/reconciliation',
    {
      config: { access },
      schema: {
        summary: 'The newest reconciliation of a parcel',
        description: 'A firm sees the newest of its own findings.',
        tags,
        operationId: 'readNewestReconciliation',
        params: parcelPath,
        querystring: systemQuery,
        response: { 200: reconciliation },
      },
    },
    async ({ context, actor, params, query }) =>
      presentReconciliation(
        answered(await readNewestReconciliation(context, actor, params.parcel, query.system)),
      ),
  )

  app.get(
    '/counties/:county/parcels/:parcel/reconciliations',
    {
      config: { access },
      schema: {
        summary: 'Every reconciliation of a parcel, newest first',
        tags,
        operationId: 'listReconciliations',
        params: parcelPath,
        querystring: systemQuery.extend(pageQuery),
        response: { 200: pageOf(reconciliationInList) },
      },
    },
    async (request, reply) => {
      const { context, actor, params, query } = request
      const cursor = cursorFrom(request, listKey)
      const before = cursor && { madeAt: new Date(cursor[0]), id: cursor[1] }
      const rows = answered(
        await listReconciliations(context, actor, params.parcel, before, query.limit + 1, query.system),
      )
      const keyOf = ({ madeAt, id: of }: (typeof rows)[number]) => [madeAt.toISOString(), of]
      return pageFrom(request, reply, rows, keyOf, presentInList)
    },
  )

  app.get(
    '/counties/:county/reconciliations/:id',
    {
      config: { access },
      schema: {
        summary: 'A reconciliation as it was made',
        tags,
        operationId: 'readReconciliation',
        params: idPath,
        response: { 200: reconciliation },
      },
    },
    async ({ context, actor, params }) =>
      presentReconciliation(answered(await readReconciliation(context, actor, params.id))),
  )

  app.get(
    '/counties/:county/reconciliations/:id/replay',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'Compute a reconciliation again from its kept inputs',
        tags,
        operationId: 'replayReconciliation',
        params: idPath,
        response: { 200: replay },
      },
    },
    async ({ context, actor, params }) => {
      const { bytes: _, missing, ...told } = answered(await replayReconciliation(context, actor, params.id))
      return { ...told, missing: [...missing] }
    },
  )
}
