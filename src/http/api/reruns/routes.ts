import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { beginRerun } from '../../../operations/reruns/begin-rerun.ts'
import { pauseRerun, resumeRerun } from '../../../operations/reruns/pause-rerun.ts'
import {
  listRerunParcels,
  listReruns,
  type RerunRead,
  readRerun,
} from '../../../operations/reruns/read-rerun.ts'
import { RERUN_CAUSES, RERUN_OUTCOMES, RERUN_STATES, type Rerun } from '../../../store/reruns.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { id, instant } from '../shapes/basics.ts'
import { countyPath, idPath } from '../shapes/paths.ts'

const tags = ['Re-runs']
const access = ['reviewer'] as const

const rerunInList = z
  .object({
    id,
    cause: z.enum(RERUN_CAUSES),
    state: z.enum(RERUN_STATES),
    askedAt: instant,
    endedAt: instant.nullable(),
  })
  .meta({ id: 'RerunInList', description: 'Parcels of a county reconciled again' })

const rerun = rerunInList
  .extend({
    parcels: z
      .object({
        waiting: z.int(),
        unaffected: z.int().meta({ description: 'Not changed, because none of their inputs has changed' }),
        same: z.int().meta({ description: 'Reconciled again, with the same differences' }),
        changed: z.int(),
        failed: z.int(),
      })
      .meta({ description: 'How many parcels are where' }),
  })
  .meta({ id: 'Rerun', description: 'A re-run and its progress' })

const present = (it: Rerun): z.output<typeof rerunInList> => ({
  id: it.id,
  cause: it.cause,
  state: it.state,
  askedAt: it.askedAt.toISOString(),
  endedAt: it.endedAt?.toISOString() ?? null,
})
const presentRead = ({ rerun: it, counts }: RerunRead): z.output<typeof rerun> => ({
  ...present(it),
  parcels: counts,
})

export const reruns: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/reruns',
    {
      config: { access, idempotent: true },
      schema: {
        summary: 'Reconcile the whole county again',
        description:
          'After a rule change or an upgrade. Parcels whose inputs are the same as for their newest result are ' +
          'recognized by hash and skipped.',
        tags,
        operationId: 'beginRerun',
        params: countyPath,
        body: z
          .strictObject({ cause: z.enum(['rules-changed', 'engine-changed', 'asked-for']) })
          .meta({ id: 'RerunEntry', examples: [{ cause: 'rules-changed' }] }),
        response: { 202: rerun },
      },
    },
    async ({ context, actor, body }, reply) => {
      const begun = answered(await beginRerun(context, actor, body.cause))
      reply.code(202).header('location', `/v1/counties/${actor.county}/reruns/${begun.rerun.id}`)
      return presentRead(begun)
    },
  )

  app.get(
    '/counties/:county/reruns',
    {
      config: { access },
      schema: {
        summary: 'The re-runs, newest first',
        tags,
        operationId: 'listReruns',
        params: countyPath,
        querystring: z.object(pageQuery),
        response: { 200: pageOf(rerunInList) },
      },
    },
    async (request, reply) => {
      const { context, actor, query } = request
      const rows = await listReruns(context, actor, cursorFrom(request, z.guid()), query.limit + 1)
      return pageFrom(request, reply, rows, (row) => row.id, present)
    },
  )

  app.get(
    '/counties/:county/reruns/:id',
    {
      config: { access },
      schema: {
        summary: 'The progress of a re-run',
        tags,
        operationId: 'readRerun',
        params: idPath,
        response: { 200: rerun },
      },
    },
    async ({ context, actor, params }) => presentRead(answered(await readRerun(context, actor, params.id))),
  )

  app.get(
    '/counties/:county/reruns/:id/parcels',
    {
      config: { access },
      schema: {
        summary: 'The parcels of a re-run with one result',
        tags,
        operationId: 'listRerunParcels',
        params: idPath,
        querystring: z.object({
          ...pageQuery,
          outcome: z
            .enum(RERUN_OUTCOMES)
            .default('changed')
            .meta({ examples: ['changed'] }),
        }),
        response: {
          200: pageOf(z.object({ parcel: id, number: z.string(), says: z.string().nullable() })),
        },
      },
    },
    async (request, reply) => {
      const { context, actor, params, query } = request
      const asked = {
        outcome: query.outcome,
        after: cursorFrom(request, z.guid()),
        most: query.limit + 1,
      }
      const rows = answered(await listRerunParcels(context, actor, params.id, asked))
      return pageFrom(
        request,
        reply,
        rows,
        (row) => row.parcel,
        ({ parcel, number, says }) => ({ parcel, number, says }),
      )
    },
  )

  for (const [word, move, summary] of [
    ['pause', pauseRerun, 'Pause a re-run'],
    ['resumption', resumeRerun, 'Go on with a re-run'],
  ] as const) {
    app.post(
      `/counties/:county/reruns/:id/${word}`,
      {
        config: { access },
        schema: {
          summary,
          tags,
          operationId: word === 'pause' ? 'pauseRerun' : 'resumeRerun',
          params: idPath,
          response: { 200: rerun },
        },
      },
      async ({ context, actor, params }) => presentRead(answered(await move(context, actor, params.id))),
    )
  }
}
