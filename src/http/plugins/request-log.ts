import { type FastifyBaseLogger, type FastifyReply, type FastifyRequest, LogController } from 'fastify'

/** One line for a request, when it has been answered; what watches the service goes by only at `debug`. */
class OneLineEach extends LogController {
  override incomingRequest(): void {}

  override requestCompleted(fault: Error | null, request: FastifyRequest, reply: FastifyReply): void {
    const line = {
      req: { method: request.method, url: addressOf(request) },
      res: reply,
      ms: Math.round(reply.elapsedTime * 10) / 10,
    }
    if (fault) request.log.error({ ...line, err: fault }, 'the answer could not be sent')
    else levelOf(request)(line, 'answered')
  }
}

/** A letter's code opens what it says to whoever has it: it is no more in the log than a token is. */
const addressOf = ({ url, routeOptions }: FastifyRequest): string =>
  routeOptions.url?.includes(':code') ? routeOptions.url : url

function levelOf({ url, log }: FastifyRequest): FastifyBaseLogger['info'] {
  const watched = url.startsWith('/health/') || url.startsWith('/metrics')
  return watched ? log.debug.bind(log) : log.info.bind(log)
}

export const requestLog = (): LogController => new OneLineEach({ requestIdLogLabel: 'requestId' })
