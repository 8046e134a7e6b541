import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { tryReconciliation } from '../../../operations/reconciliation/try-reconciliation.ts'
import { dateEntry } from '../../../reading/entry/quantity.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { findingsBody, findingsExample, permitBody, permitExample } from '../shapes/entries.ts'
import { presentResult, reconciliationResult } from '../shapes/outcome.ts'

/** A system has a dozen or two parts. Every tank is held against every well, so that many would hold up everybody else. */
const MOST_COMPONENTS = 60

const trialBody = z
  .strictObject({
    rules: z
      .string()
      .max(40)
      .meta({ description: 'Whose rules: a place in /v1/rules', examples: ['quillback'] }),
    asOf: dateEntry.optional().meta({ description: 'The day that counts as today; default today' }),
    permits: z
      .array(permitBody)
      .max(20)
      .default([])
      .refine(
        (permits) => permits.reduce((sum, { components }) => sum + components.length, 0) <= MOST_COMPONENTS,
        `a trial takes at most ${MOST_COMPONENTS} components in all`,
      )
      .meta({ description: 'Named permit-1, permit-2 and so on; a component is permit-1/its tag' }),
    findings: findingsBody.nullish(),
  })
  .meta({
    id: 'Trial',
    examples: [{ rules: 'quillback', permits: [permitExample], findings: findingsExample }],
  })

export const trial: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/reconciliations/trial',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'Reconcile a record and findings without storing anything',
        description:
          'The same work as for a parcel: record and findings in the body, the answer in the body.',
        tags: ['Reconciliations'],
        operationId: 'tryReconciliation',
        body: trialBody,
        response: { 200: reconciliationResult },
      },
    },
    async ({ context, body }) => {
      const { rules, asOf, permits, findings } = body
      return presentResult(
        answered(
          tryReconciliation(context, { rules, asOf: asOf ?? null, permits, findings: findings ?? null }),
        ),
      )
    },
  )
}
