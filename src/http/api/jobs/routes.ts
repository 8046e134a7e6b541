import { Readable } from 'node:stream'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readJob } from '../../../operations/jobs/read-job.ts'
import { JOB_STATES, type Job } from '../../../store/jobs.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { id, instant } from '../shapes/basics.ts'
import { idPath } from '../shapes/paths.ts'
import { watch } from './watch.ts'

const tags = ['Jobs']

const job = z
  .object({
    id,
    kind: z.string(),
    state: z.enum(JOB_STATES),
    done: z.number(),
    total: z.number().nullable().meta({ description: 'Null while unknown' }),
    says: z.string().nullable(),
    result: z.unknown().meta({ description: 'The result; null until it is done' }),
    requestedAt: instant,
    changedAt: instant,
  })
  .meta({ id: 'Job', description: 'Long work, and how far it is' })

const present = (it: Job): z.output<typeof job> => ({
  id: it.id,
  kind: it.kind,
  state: it.state,
  done: it.done,
  total: it.total,
  says: it.says,
  result: it.result ?? null,
  requestedAt: it.requestedAt.toISOString(),
  changedAt: it.changedAt.toISOString(),
})

export const jobs: FastifyPluginAsyncZod = async (app) => {
  const closing = new AbortController()
  app.addHook('preClose', async () => closing.abort())

  app.get(
    '/counties/:county/jobs/:id',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'The state of a job',
        description: 'A firm or an agent sees its own, a reviewer those of the county.',
        tags,
        operationId: 'readJob',
        params: idPath,
        response: { 200: job },
      },
    },
    async ({ context, actor, params }) => present(answered(await readJob(context, actor, params.id))),
  )

  app.get(
    '/counties/:county/jobs/:id/events',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'Watch a job: server-sent events',
        description:
          'Sends an event `job` with the job as JSON at once and at each change, and ends when the job ends. After a ' +
          'reconnect it sends the job as it is then.',
        tags,
        operationId: 'watchJob',
        produces: ['text/event-stream'],
        params: idPath,
        response: { 200: z.string().meta({ description: 'The events' }) },
      },
    },
    async (request, reply) => {
      const { context, actor, params } = request
      const read = async (): Promise<Job> => answered(await readJob(context, actor, params.id))
      const first = await read()
      const gone = new AbortController()
      request.raw.once('close', () => gone.abort())
      const until = AbortSignal.any([closing.signal, gone.signal])
      reply.header('content-type', 'text/event-stream; charset=utf-8')
      reply.header('cache-control', 'no-store').header('x-accel-buffering', 'no')
      const events = Readable.from(watch(first, read, (it) => JSON.stringify(present(it)), until))
      // Described as the text it is; sent as it comes.
      return reply.send(events as unknown as string)
    },
  )
}
