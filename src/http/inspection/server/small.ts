import { promisify } from 'node:util'
import { brotliCompress, constants } from 'node:zlib'
import type { FastifyReply, FastifyRequest } from 'fastify'

const brotli = promisify(brotliCompress)
const QUICK = { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } }

/** Text as few bytes, where whoever asks takes them: a yard has little signal. */
export async function small(
  { headers }: FastifyRequest,
  reply: FastifyReply,
  text: string,
): Promise<FastifyReply> {
  reply.header('vary', 'accept-encoding')
  if (!/\bbr\b/.test(String(headers['accept-encoding'] ?? ''))) return reply.send(text)
  return reply.header('content-encoding', 'br').send(await brotli(text, QUICK))
}
