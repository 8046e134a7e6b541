import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { Answer } from '../../../operations/refusal.ts'
import { addSystem, changeSystem } from '../../../operations/systems/change-system.ts'
import { readParcelSystems } from '../../../operations/systems/read-systems.ts'
import { readEntry } from '../../../reading/entry/read-entry.ts'
import { answered } from '../../api/answer.ts'
import { entryOf, systemBody } from '../../api/systems/shapes.ts'
import { systemsPath } from '../layout/addresses.ts'
import { bodyOf, type FormReturned, faultsOf, type TypedSystem, typedBy } from './read-form.ts'
import { systemsView } from './view.ts'

const params = z.object({ county: z.string(), parcel: z.string() })

/** The systems of a parcel, for reviewers: what each serves, where it lies, how that is known. */
export const systemPages: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel/systems',
    { config: { access: ['reviewer'] }, schema: { params } },
    async (request, reply) => show(request, reply, request.params.parcel, null, 200),
  )

  app.post(
    '/counties/:county/parcels/:parcel/systems',
    { config: { access: ['reviewer'] }, schema: { params } },
    async (request, reply) => {
      const { context, actor, params: at, body } = request
      const typed = typedBy(body)
      const parsed = readEntry(systemBody, bodyOf(typed))
      if (!parsed.ok) return again(request, reply, at.parcel, typed, faultsOf(parsed.error, typed), 422)
      const entry = entryOf(parsed.value)
      const saved: Answer<unknown> =
        typed.id === ''
          ? await addSystem(context, actor, at.parcel, entry)
          : await changeSystem(context, actor, { id: typed.id, version: Number(typed.revision), entry })
      if (saved.ok) return reply.redirect(systemsPath(actor.county, at.parcel), 303)
      switch (saved.error.why) {
        case 'invalid':
          return again(request, reply, at.parcel, typed, faultsOf(saved.error.issues, typed), 422)
        case 'conflict':
          return again(request, reply, at.parcel, typed, [saved.error.says], 409)
        case 'stale':
          return again(request, reply, at.parcel, typed, [CHANGED], 412)
        default:
          return answered(saved)
      }
    },
  )
}

const CHANGED =
  'Someone else changed this system while you had it open. Nothing was saved. Compare with its history below, then save again.'

const again = (
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
  typed: TypedSystem,
  faults: readonly string[],
  status: number,
) => show(request, reply, asked, { typed, faults }, status)

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
  returned: FormReturned | null,
  status: number,
): Promise<FastifyReply> {
  const { context, actor } = request
  const { parcel, systems, histories, names } = answered(await readParcelSystems(context, actor, asked))
  const body = systemsView({ county: actor.county, parcel, systems, histories, names, returned })
  return reply.page({ title: `${parcel.number}: septic systems`, body }, status)
}
