import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { type DecisionAsked, decide } from '../../../operations/discrepancies/decide.ts'
import { type DiscrepancyRead, readDiscrepancy } from '../../../operations/discrepancies/read-discrepancy.ts'
import type { Refusal } from '../../../operations/refusal.ts'
import { filedAt } from '../../../operations/systems/system-address.ts'
import { readEntry } from '../../../reading/entry/read-entry.ts'
import type { Person } from '../../../store/database/actor.ts'
import { answered } from '../../api/answer.ts'
import { decisionBody } from '../../api/discrepancies/shapes.ts'
import { problem } from '../../problem.ts'
import { differenceAnchor, parcelPath } from '../layout/addresses.ts'
import type { Faults, Typed } from '../parcel/decide-form.ts'
import { showFile } from '../parcel/show-file.ts'
import { bodyOf, faultsOf, valueFaults } from './read-form.ts'

const params = z.object({ county: z.string(), id: z.guid('is not an id') })

/** Takes the form under a difference. What cannot be done comes back with what was typed and the reason beside it. */
export const decision: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/discrepancies/:id/decisions',
    { config: { access: ['reviewer'] }, schema: { params } },
    async (request, reply) => {
      const { context, actor, params: at } = request
      const typed = typedBy(request.body)
      const version = Number(typed.version)
      if (!Number.isInteger(version)) throw problem('version-needed')
      const body = bodyOf(typed)
      const parsed = readEntry(decisionBody, body)
      if (!parsed.ok) {
        const issues = [...parsed.error, ...valueFaults(body)]
        return again(request, reply, typed, 422, faultsOf(issues))
      }
      const { action, reason, asks = null, correction = null, supersedes = null } = parsed.value
      const asked: DecisionAsked = {
        discrepancy: at.id,
        version,
        action,
        reason,
        asks,
        correction: correction && { ...correction, component: correction.component ?? null },
        supersedes,
      }
      const decided = await decide(context, actor, asked)
      if (decided.ok) return backTo(reply, actor, await now(request))
      return refused(request, reply, typed, asked, decided.error)
    },
  )
}

const now = async ({ context, actor, params: at }: FastifyRequest): Promise<DiscrepancyRead> =>
  answered(await readDiscrepancy(context, actor, (at as z.output<typeof params>).id))

const backTo = (reply: FastifyReply, { county }: Person, { parcel, discrepancy }: DiscrepancyRead) =>
  reply.redirect(
    `${parcelPath(county, filedAt(parcel.number, discrepancy))}?done=${discrepancy.id}#${differenceAnchor(discrepancy.id)}`,
    303,
  )

async function refused(
  request: FastifyRequest,
  reply: FastifyReply,
  typed: Typed,
  asked: DecisionAsked,
  refusal: Refusal,
): Promise<FastifyReply> {
  if (refusal.why === 'invalid') return again(request, reply, typed, 422, faultsOf(refusal.issues))
  if (refusal.why !== 'stale' && refusal.why !== 'conflict') return answered({ ok: false, error: refusal })
  const standing = await now(request)
  // A form sent twice, by two presses of a button: the first made the decision.
  if (isSame(standing, asked, request.actor)) return backTo(reply, request.actor, standing)
  const notice =
    standing.discrepancy.decision !== asked.supersedes
      ? 'Someone else decided this while you had it open. Their decision is shown below. To replace it, decide again.'
      : standing.discrepancy.state === 'vanished'
        ? 'This difference is gone: the record and the findings now match. Nothing was decided.'
        : 'This changed while you had it open. Nothing was decided. Review it as it is now, then decide.'
  return again(request, reply, typed, refusal.why === 'stale' ? 412 : 409, {}, notice)
}

function isSame(
  { discrepancy, decisions }: DiscrepancyRead,
  asked: DecisionAsked,
  { account }: Person,
): boolean {
  const standing = decisions.find(({ id }) => id === discrepancy.decision)
  return (
    standing !== undefined &&
    standing.decidedBy === account &&
    standing.action === asked.action &&
    standing.reason === asked.reason &&
    standing.asks === asked.asks &&
    standing.supersedes === asked.supersedes
  )
}

/** The parcel's page as it is now, with the form open where it was sent from. */
async function again(
  request: FastifyRequest,
  reply: FastifyReply,
  typed: Typed,
  status: 409 | 412 | 422,
  faults: Faults,
  notice: string | null = null,
): Promise<FastifyReply> {
  const { parcel, discrepancy } = await now(request)
  const says = notice ?? 'Nothing was decided yet. Please fix the form. What you typed is still there.'
  const { version: _, supersedes: __, ...written } = typed
  return showFile(request, reply, filedAt(parcel.number, discrepancy), {
    returned: { discrepancy: discrepancy.id, typed: written, faults, notice: notice ?? null },
    notice: { says, fault: true },
    status,
  })
}

/** The fields of a form; of a field sent twice the last. */
const typedBy = (body: unknown): Typed =>
  Object.fromEntries(
    Object.entries((body ?? {}) as Readonly<Record<string, unknown>>).filter(
      (entry): entry is [string, string] => typeof entry[1] === 'string',
    ),
  )
