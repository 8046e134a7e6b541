import { promisify } from 'node:util'
import { constants, gzip } from 'node:zlib'
import type { FastifyReply } from 'fastify'

const squeeze = promisify(gzip)

/** Under this many characters the frame of the answer weighs more than what is saved. */
const WORTH_IT = 1_500

const takesGzip = (accepted: string | string[] | undefined): boolean =>
  /\bgzip\b/.test(String(accepted ?? ''))

/**
 * The answer as the browser takes it: a page of words shrinks to a fifth, which a phone in a yard notices. Nothing
 * secret stands in a page that another site could have asked for with words of its own choosing: cookies stay behind
 * then (SameSite), and no page carries a token.
 */
export async function gzipped(reply: FastifyReply, text: string, ready?: Buffer): Promise<string | Buffer> {
  reply.header('vary', 'accept-encoding')
  if (text.length < WORTH_IT || !takesGzip(reply.request.headers['accept-encoding'])) return text
  reply.header('content-encoding', 'gzip')
  return ready ?? squeeze(text, { level: constants.Z_BEST_SPEED })
}
