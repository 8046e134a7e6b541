import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { decide } from '../../../operations/discrepancies/decide.ts'
import { listDiscrepancies } from '../../../operations/discrepancies/list-discrepancies.ts'
import { readDiscrepancy } from '../../../operations/discrepancies/read-discrepancy.ts'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../../reconcile/kinds.ts'
import { DISCREPANCY_STATES } from '../../../reconcile/projection.ts'
import { queueKeyOf } from '../../../store/discrepancies.ts'
import type { QueueFilter } from '../../../store/queue-heads.ts'
import { requireVersion, tagRevision } from '../../plugins/entity-tag.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { consequence, presentConsequence } from '../shapes/changes.ts'
import { countyPath, idPath } from '../shapes/paths.ts'
import { presentStatus, status } from '../shapes/status.ts'
import {
  decision,
  decisionBody,
  discrepancy,
  discrepancyInQueue,
  presentDecision,
  presentDiscrepancy,
  presentInQueue,
} from './shapes.ts'

const tags = ['Discrepancies']
const access = ['reviewer', 'firm'] as const

/** One value, or several: `?state=open&state=ground-moved`. */
const several = <const T extends readonly [string, ...string[]]>(words: T, description: string) =>
  z
    .union([z.enum(words), z.array(z.enum(words)).max(words.length)])
    .optional()
    .meta({ description })

const queueQuery = z.object({
  ...pageQuery,
  state: several(DISCREPANCY_STATES, 'Open and ground-moved where left out: what is still to be decided'),
  kind: several(DISCREPANCY_KINDS, 'Of these kinds; may be repeated'),
  severity: several(SEVERITIES, 'Of these severities; may be repeated'),
  since: z
    .union(
      [z.iso.datetime({ offset: true }), z.iso.date()],
      'write a date or time, for example 2026-11-25T09:30:00Z',
    )
    .optional()
    .meta({ description: 'Changed then or later', examples: ['2026-11-01'] }),
  parcel: z
    .string()
    .min(1)
    .max(80)
    .refine(
      (text) => text.isWellFormed() && !text.includes('\u0000'),
      'contains characters that cannot be stored',
    )
    .optional()
    .meta({ description: 'Of one parcel, by number or id', examples: ['07-0412-0031'] }),
})

const queueKey = z.tuple([z.int().min(1).max(3), z.iso.datetime(), z.guid()])

const listOf = <T>(asked: T | readonly T[] | undefined): readonly T[] =>
  asked === undefined ? [] : Array.isArray(asked) ? asked : [asked as T]

function filterOf({ state, kind, severity, since, parcel }: z.output<typeof queueQuery>): QueueFilter {
  return {
    states: state === undefined ? ['open', 'ground-moved'] : listOf(state),
    kinds: listOf(kind),
    severities: listOf(severity),
    since: since === undefined ? undefined : new Date(since),
    parcel,
  }
}

const counts = z.object({ action: z.number(), review: z.number(), note: z.number() })

export const discrepancies: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/discrepancies',
    {
      config: { access },
      schema: {
        summary: 'The county’s queue of discrepancies',
        description: 'Most serious first, then oldest. A firm sees those raised by its own newest findings.',
        tags,
        operationId: 'listDiscrepancies',
        params: countyPath,
        querystring: queueQuery,
        response: {
          200: pageOf(discrepancyInQueue).extend({
            counts: counts
              .nullable()
              .meta({ description: 'How many of each severity match the filter; on the first page only' }),
          }),
        },
      },
    },
    async (request, reply) => {
      const { context, actor, query } = request
      const cursor = cursorFrom(request, queueKey)
      const after = cursor && { rank: cursor[0], raisedAt: new Date(cursor[1]), id: cursor[2] }
      const queue = answered(await listDiscrepancies(context, actor, filterOf(query), after, query.limit + 1))
      const keyOf = (row: (typeof queue.rows)[number]) => {
        const { rank, raisedAt, id } = queueKeyOf(row)
        return [rank, raisedAt.toISOString(), id]
      }
      const page = pageFrom(request, reply, queue.rows, keyOf, presentInQueue)
      return { ...page, counts: queue.counts && { ...queue.counts } }
    },
  )

  app.get(
    '/counties/:county/discrepancies/:id',
    {
      config: { access },
      schema: {
        summary: 'A discrepancy with its evidence, decisions and history',
        tags,
        operationId: 'readDiscrepancy',
        params: idPath,
        response: { 200: discrepancy },
      },
    },
    async ({ context, actor, params }, reply) => {
      const read = answered(await readDiscrepancy(context, actor, params.id))
      tagRevision(reply, read.discrepancy.revision)
      return presentDiscrepancy(read)
    },
  )

  app.post(
    '/counties/:county/discrepancies/:id/decisions',
    {
      config: { access: ['reviewer'], idempotent: true, replaces: true },
      schema: {
        summary: 'Decide about a discrepancy, with a reason',
        description:
          'Needs the ETag of the discrepancy: if two reviewers decide at once, the second gets a 412. A correction of ' +
          'the record reconciles the parcel in the same step. Decisions are never deleted. To replace one, name it in ' +
          '`supersedes`.',
        tags,
        operationId: 'decide',
        params: idPath,
        body: decisionBody,
        response: {
          201: z.object({
            decision,
            discrepancy: z.object({
              id: z.string(),
              state: z.enum(DISCREPANCY_STATES),
              revision: z.number(),
            }),
            status,
            consequence: consequence
              .nullable()
              .meta({ description: 'Where the decision changed the record' }),
          }),
        },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const { action, reason, asks = null, correction = null, supersedes = null } = body
      const decided = answered(
        await decide(context, actor, {
          discrepancy: params.id,
          version: requireVersion(request),
          action,
          reason,
          asks,
          correction: correction && { ...correction, component: correction.component ?? null },
          supersedes,
        }),
      )
      const { id, state, revision } = decided.discrepancy
      reply.code(201).header('location', `/v1/counties/${actor.county}/discrepancies/${id}`)
      tagRevision(reply, revision)
      return {
        decision: presentDecision(decided.decision),
        discrepancy: { id, state, revision },
        status: presentStatus(decided.status),
        consequence: decided.reconciled && presentConsequence(decided.reconciled),
      }
    },
  )
}
