import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'
import { asProblem, type TellPerson } from '../../plugins/error-answers.ts'
import type { Problem } from '../../problem.ts'
import { problemPage } from './view.ts'

/** A browser outside the API gets a page. */
const wantsPage = ({ url, headers }: FastifyRequest): boolean =>
  !url.startsWith('/v1/') && /\btext\/html\b/.test(headers.accept ?? '')

/** Failures of a page. Who is not signed in is sent to sign in, and then back. */
export async function answerFaultAsPage(fault: FastifyError, request: FastifyRequest, reply: FastifyReply) {
  const found = asProblem(fault, request)
  if (found.kind === 'not-signed-in' && request.method === 'GET' && wantsPage(request)) {
    return reply.redirect(`/sign-in?to=${encodeURIComponent(request.url)}`, 303)
  }
  return sendProblemPage(found, request, reply)
}

export async function sendProblemPage(found: Problem, request: FastifyRequest, reply: FastifyReply) {
  const { 'www-authenticate': _, ...headers } = found.headers
  return reply.headers(headers).page(problemPage(found, request.id), found.status)
}

/** An address that no route has. */
export const tellPerson: TellPerson = (found, request, reply) =>
  wantsPage(request) ? sendProblemPage(found, request, reply) : undefined
