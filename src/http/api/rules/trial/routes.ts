import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { beginTrial, readTrial } from '../../../../operations/rule-trials/begin-trial.ts'
import type { TrialResult } from '../../../../operations/rule-trials/try-rules.ts'
import { prose } from '../../../../reading/entry/fields.ts'
import { DISCREPANCY_KINDS } from '../../../../reconcile/kinds.ts'
import { JOB_STATES, type Job } from '../../../../store/jobs.ts'
import { answered } from '../../answer.ts'
import { day, id } from '../../shapes/basics.ts'
import { countyPath, idPath } from '../../shapes/paths.ts'

const tags = ['Rules']
const access = ['reviewer'] as const

/** A pack with its citations is some ten thousand characters. */
const MOST_CHARACTERS = 300_000

export const trialBody = z
  .strictObject({
    yaml: prose(MOST_CHARACTERS).min(1, 'write the pack').meta({
      description: 'A rule pack, as in docs/rules.md; it replaces the pack of the same name in the trial',
    }),
  })
  .meta({
    id: 'RuleTrialEntry',
    examples: [{ yaml: 'pack: quillback/code\njurisdiction: { kind: county, name: Quillback County }\n…' }],
  })

const group = { looked: z.int(), changed: z.int() }
const result = z.object({
  pack: z.string(),
  asOf: day,
  parameters: z
    .array(z.string())
    .meta({ description: 'The parameters that the proposed rules change for this county' }),
  looked: z.int().meta({ description: 'Parcels with a permit or an inspection on file' }),
  changed: z.int().meta({ description: 'Those with a different result' }),
  byKind: z.array(
    z.object({ kind: z.enum(DISCREPANCY_KINDS), appears: z.int(), vanishes: z.int(), changes: z.int() }),
  ),
  byDecade: z
    .array(z.object({ decade: z.int().nullable(), ...group }))
    .meta({ description: 'By the first approved permit' }),
  byBedrooms: z.array(z.object({ bedrooms: z.number().nullable(), ...group })),
  parcels: z
    .array(
      z.object({
        parcel: id,
        number: z.string(),
        decade: z.int().nullable(),
        bedrooms: z.number().nullable(),
        changes: z.array(
          z.object({
            change: z.enum(['appears', 'vanishes', 'changes']),
            kind: z.enum(DISCREPANCY_KINDS),
            about: z.string(),
            inForce: z.string().nullable().meta({ description: 'The text now; null if there is none' }),
            proposed: z.string().nullable(),
          }),
        ),
      }),
    )
    .meta({ description: 'The parcels that would change, at most 10,000 of them; the counts are of all' }),
})

const trial = z
  .object({
    id,
    state: z.enum(JOB_STATES),
    done: z.int(),
    total: z.int().nullable(),
    says: z.string().nullable(),
    result: result.nullable().meta({ description: 'Null until it is done' }),
  })
  .meta({ id: 'RuleTrial', description: 'Proposed rules against a whole county' })

const present = (job: Job): z.output<typeof trial> => ({
  id: job.id,
  state: job.state,
  done: job.done,
  total: job.total,
  says: job.says,
  result: job.state === 'done' ? (job.result as z.output<typeof result> & TrialResult) : null,
})

export const ruleTrials: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/rules/trial',
    {
      config: { access, idempotent: true },
      schema: {
        summary: 'Try proposed rules against the whole county',
        description:
          'Compares every parcel on file under the rules in force and under the proposed ones: how many change and how, ' +
          'by kind, decade and bedroom count, with the list. Only the result is stored. A faulty pack is a 422 with ' +
          'every fault and its line.',
        tags,
        operationId: 'tryRules',
        params: countyPath,
        body: trialBody,
        response: { 202: z.object({ trial: id }) },
      },
    },
    async ({ context, actor, body }, reply) => {
      const begun = answered(await beginTrial(context, actor, body.yaml))
      reply.code(202).header('location', `/v1/counties/${actor.county}/rules/trials/${begun}`)
      return { trial: begun }
    },
  )

  app.get(
    '/counties/:county/rules/trials/:id',
    {
      config: { access },
      schema: {
        summary: 'The progress and result of a rules trial',
        tags,
        operationId: 'readRuleTrial',
        params: idPath,
        response: { 200: trial },
      },
    },
    async ({ context, actor, params }) => present(answered(await readTrial(context, actor, params.id))),
  )
}
