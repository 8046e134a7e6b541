import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readCounty } from '../../../operations/counties/read-counties.ts'
import { prepareInspection } from '../../../operations/findings/prepare-inspection.ts'
import { answered } from '../../api/answer.ts'
import { problem } from '../../problem.ts'
import { inspectionFile, rulesText } from './file.ts'
import { type PhoneFile, phoneFiles } from './phone-files.ts'
import { small } from './small.ts'

const FOR_EVER = 'max-age=31536000, immutable'

/** What the form needs besides its page: its modules and sheet, the file of the parcel, the rules, the service worker. */
export const inspectionFiles: FastifyPluginAsyncZod = async (app) => {
  // Made while the first people still sign in, and not before anybody listens.
  app.addHook('onListen', async function () {
    const { trouble } = await phoneFiles()
    if (trouble) this.log.error({ err: trouble }, 'the phone form works as a plain form only')
  })

  app.get('/assets/inspection/:name', { config: { access: 'open' } }, async (request, reply) => {
    const file = (await phoneFiles()).files.get(request.url.split('?', 1)[0] ?? '')
    return sendFile(request, reply, file, `public, ${FOR_EVER}`)
  })

  // At the root, because a worker may only look after what lies below its own address.
  app.get('/inspection-worker.js', { config: { access: 'open' } }, async (request, reply) =>
    sendFile(request, reply, (await phoneFiles()).worker ?? undefined, 'no-cache'),
  )

  app.get(
    '/counties/:county/parcels/:parcel/inspection/file.json',
    {
      config: { access: ['firm'] },
      schema: { params: z.object({ county: z.string(), parcel: z.string() }) },
    },
    async (request, reply) => {
      const { context, actor, params } = request
      const prepared = answered(await prepareInspection(context, actor, params.parcel))
      reply.header('cache-control', 'private, no-cache').type('application/json; charset=utf-8')
      return small(request, reply, JSON.stringify(inspectionFile(prepared, actor)))
    },
  )

  app.get(
    '/counties/:county/inspection-rules/:name',
    { config: { access: ['firm'] }, schema: { params: z.object({ county: z.string(), name: z.string() }) } },
    async (request, reply) => {
      const { context, actor, params } = request
      const { place } = answered(await readCounty(context, actor.county))
      const { text, hash } = rulesText(context.book, place)
      if (params.name !== `${hash}.json`) throw problem('not-found')
      reply.header('cache-control', `private, ${FOR_EVER}`).type('application/json; charset=utf-8')
      return small(request, reply, text)
    },
  )
}

function sendFile(
  request: FastifyRequest,
  reply: FastifyReply,
  file: PhoneFile | undefined,
  keep: string,
): FastifyReply {
  if (!file) throw problem('not-found')
  const takes = String(request.headers['accept-encoding'] ?? '')
  const encoding = /\bbr\b/.test(takes) ? 'br' : /\bgzip\b/.test(takes) ? 'gzip' : null
  reply.type(file.type).header('cache-control', keep).header('vary', 'accept-encoding')
  if (encoding) reply.header('content-encoding', encoding)
  return reply.send(encoding ? file[encoding] : file.plain)
}
