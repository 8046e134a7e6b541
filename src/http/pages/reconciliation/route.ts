import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readFindings } from '../../../operations/findings/read-findings.ts'
import { readReconciliation } from '../../../operations/reconciliation/read-reconciliation.ts'
import { answered } from '../../api/answer.ts'
import { presentComparison } from '../parcel/comparison/present.ts'
import { presentPlan, submitted } from '../parcel/file.ts'
import { reconciliationView } from './view.ts'

const params = z.object({ county: z.string(), id: z.guid('is not an id') })

/** A reconciliation as it was made, whatever has come since. */
export const reconciliation: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/reconciliations/:id',
    { config: { access: ['reviewer', 'firm'] }, schema: { params } },
    async ({ context, actor, params: { id } }, reply) => {
      const read = answered(await readReconciliation(context, actor, id))
      const { findings, inputs } = read.reconciliation
      const { result } = read
      const inspection = findings === null ? null : answered(await readFindings(context, actor, findings))
      const body = reconciliationView(read, {
        county: actor.county,
        audience: actor.role === 'firm' ? 'firm' : 'reviewer',
        comparison: presentComparison(result, inspection?.record ?? null),
        plan: presentPlan({
          asBuilt: result.asBuilt,
          findings: submitted(inspection),
          book: context.book,
          county: inputs.place,
        }),
      })
      return reply.page({ title: `${read.parcel.number} as it was`, body })
    },
  )
}
