import type { FastifyInstance } from 'fastify'
import { problem } from '../problem.ts'
import { isProblemName, PROBLEMS } from '../problem-catalog.ts'

/** The address in a problem's `type` explains it. */
export function explainProblems(app: FastifyInstance): void {
  app.get<{ Params: { name: string } }>(
    '/problems/:name',
    { config: { access: 'open' }, schema: { hide: true } },
    async ({ params: { name } }, reply) => {
      if (!isProblemName(name)) throw problem('not-found')
      const { status, title, about } = PROBLEMS[name]
      return reply
        .type('text/plain; charset=utf-8')
        .send(`${title} (${status})\n\n${about.replaceAll('`', '')}\n`)
    },
  )
}
