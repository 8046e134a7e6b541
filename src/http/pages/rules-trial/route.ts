import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { beginTrial, readTrial } from '../../../operations/rule-trials/begin-trial.ts'
import { packText } from '../../../operations/rule-trials/proposed-book.ts'
import type { TrialResult } from '../../../operations/rule-trials/try-rules.ts'
import { answered } from '../../api/answer.ts'
import { trialBody } from '../../api/rules/trial/routes.ts'
import { rulesPath } from '../layout/addresses.ts'
import { formView, resultView, underWayView } from './view.ts'

const access = ['reviewer'] as const
const REFRESH_SECONDS = 2

/** Rule changes tested on the whole county: the pack to test, the progress, the result. */
export const rulesTrial: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/rules/trial',
    { config: { access }, schema: { querystring: z.object({ of: z.string().max(140).optional() }) } },
    async ({ actor, query }, reply) => {
      const yaml = query.of === undefined ? '' : await packText(query.of)
      return reply.page({ title: 'Test rule changes', body: formView(actor.county, yaml ?? '', []) })
    },
  )

  app.post(
    '/counties/:county/rules/trial',
    { config: { access } },
    async ({ context, actor, body }, reply) => {
      const typed = String((body as { readonly yaml?: unknown } | undefined)?.yaml ?? '').replaceAll(
        '\r\n',
        '\n',
      )
      const again = (faults: readonly string[]) =>
        reply.page({ title: 'Test rule changes', body: formView(actor.county, typed, faults) }, 422)
      const read = trialBody.safeParse({ yaml: typed })
      if (!read.success) return again(read.error.issues.map(({ message }) => message))
      const begun = await beginTrial(context, actor, read.data.yaml)
      if (!begun.ok && begun.error.why === 'invalid')
        return again(begun.error.issues.map(({ message }) => message))
      return reply.redirect(`${rulesPath(actor.county)}/trials/${answered(begun)}`, 303)
    },
  )

  app.get(
    '/counties/:county/rules/trials/:id',
    { config: { access }, schema: { params: z.object({ county: z.string(), id: z.guid() }) } },
    async ({ context, actor, params }, reply) => {
      const job = answered(await readTrial(context, actor, params.id))
      if (job.state === 'done' && job.result !== null)
        return reply.page({
          title: 'Test of rule changes',
          body: resultView(actor.county, job.result as TrialResult),
        })
      if (job.state !== 'failed' && job.state !== 'done') reply.header('refresh', String(REFRESH_SECONDS))
      return reply.page({ title: 'Test of rule changes', body: underWayView(actor.county, job) })
    },
  )
}
