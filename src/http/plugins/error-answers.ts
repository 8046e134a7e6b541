import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { DamagedOriginal } from '../../files/whole-file.ts'
import { Overloaded } from '../../store/database/turn-away.ts'
import { Problem, problem, problemBody } from '../problem.ts'
import type { ProblemName } from '../problem-catalog.ts'

/** The framework's own refusals, by their status; their messages are in its terms and stay in the log. */
const BY_STATUS: Readonly<Record<number, ProblemName>> = {
  400: 'unreadable-request',
  404: 'not-found',
  408: 'unreadable-request',
  411: 'unreadable-request',
  413: 'too-large',
  414: 'unreadable-request',
  415: 'unsupported-type',
  431: 'unreadable-request',
  429: 'too-many-requests',
  503: 'overloaded',
}

/** Tells a person of a problem, where the request came from one; undefined where it came from a program. */
export type TellPerson = (
  found: Problem,
  request: FastifyRequest,
  reply: FastifyReply,
) => Promise<FastifyReply> | undefined

/** Every failure ends here, as `application/problem+json`; only impossible things are logged as errors. */
export function answerErrors(app: FastifyInstance, tellPerson: TellPerson = () => undefined): void {
  app.setErrorHandler(answerFault)
  app.setNotFoundHandler((request, reply) => {
    const found = problem('not-found')
    return tellPerson(found, request, reply) ?? sendProblem(found, request, reply)
  })
}

export const answerFault = (
  fault: FastifyError,
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply => sendProblem(asProblem(fault, request), request, reply)

export function sendProblem(found: Problem, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  return reply
    .code(found.status)
    .headers(found.headers)
    .type('application/problem+json; charset=utf-8')
    .serializer(JSON.stringify)
    .send(problemBody(found, request.id))
}

export function asProblem(fault: FastifyError, request: FastifyRequest): Problem {
  if (fault instanceof Problem) return fault
  if (fault instanceof DamagedOriginal) {
    request.log.error({ err: fault }, 'a damaged file')
    return problem('damaged-file', { detail: fault.message })
  }
  if (fault instanceof OutsideFailure) {
    const { retryAfterSeconds } = fault
    request.log.warn({ err: fault }, 'outside failure')
    if (retryAfterSeconds === undefined) return problem('internal')
    return problem(fault instanceof Overloaded ? 'overloaded' : 'unavailable', {
      detail: fault.message,
      headers: { 'retry-after': String(retryAfterSeconds) },
    })
  }
  if (isBrokenForm(fault)) return problem('unreadable-request', { detail: BROKEN_FORM })
  if (isUnstorableText(fault)) return problem('invalid-input', { detail: UNSTORABLE })
  const kind = BY_STATUS[fault.statusCode ?? 500]
  if (kind === undefined) {
    request.log.error({ err: fault }, 'impossible')
    return problem('internal')
  }
  const retry: Readonly<Record<string, string>> = fault.statusCode === 503 ? { 'retry-after': '5' } : {}
  return problem(kind, { ...detailOf(fault), headers: retry })
}

const BROKEN_FORM = 'The form is cut off, or the boundary between its parts is wrong.'

/** What reads forms throws plain errors, with no code to tell them by. */
const isBrokenForm = ({ code, message }: FastifyError): boolean =>
  code === undefined &&
  /^(?:Multipart: |Unexpected end of multipart data|\w+ terminated early due to unexpected end of multipart|The needle cannot )/.test(
    message,
  )

const UNSTORABLE = 'The text contains a character that cannot be stored: a NUL, or half of a surrogate pair.'

/** PostgreSQL keeps neither NUL (22021, in JSON 22P05) nor half a surrogate pair (in JSON 22P02); everything else passes. */
const isUnstorableText = ({ code, message }: FastifyError): boolean =>
  code === '22021' || code === '22P05' || (code === '22P02' && message.includes('type json'))

/** What the framework found unreadable, where its words help the sender. */
const detailOf = ({ code, message }: FastifyError): { readonly detail?: string } =>
  code?.startsWith('FST_ERR_CTP') || code === 'FST_ERR_BAD_URL' || code?.startsWith('FST_REQ_FILE')
    ? { detail: message }
    : {}
