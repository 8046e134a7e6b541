import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import {
  admitOrganization,
  listAdmissions,
  takeInOrganization,
  withdrawAdmission,
} from '../../../../operations/access/organizations.ts'
import { invitationAddress } from '../../../access/own-address.ts'
import { answered } from '../../../api/answer.ts'
import { label } from '../../../api/people/shapes.ts'
import { organizationsPath } from '../addresses.ts'
import { typed } from '../typed.ts'
import { organizationsView } from './view.ts'

const config = { access: ['reviewer'], manages: true, administers: true } as const
const params = z.object({ county: z.string(), id: z.guid() })

/** Who works in a county, for the administrators of its department. */
export const organizationPages: FastifyPluginAsyncZod = async (app) => {
  app.get('/counties/:county/organizations', { config }, async (request, reply) =>
    show(request, reply, null, null),
  )

  app.post('/counties/:county/organizations', { config }, async (request, reply) => {
    const { context, caller, actor, body } = request
    const [name, desk] = [label.safeParse(typed(body, 'organization')), label.safeParse(typed(body, 'label'))]
    const kind = typed(body, 'kind')
    if (!name.success || !desk.success || (kind !== 'firm' && kind !== 'agent')) {
      return show(request, reply, null, 'Enter the name, the type and the first person of the organization.')
    }
    const administrator = { signInName: typed(body, 'name'), label: desk.data }
    const taken = await takeInOrganization(context, caller, actor.county, {
      kind,
      name: name.data,
      administrator,
    })
    if (taken.ok) return show(request, reply, invitationAddress(request, taken.value.invitation.secret), null)
    if (taken.error.why === 'invalid') {
      return show(request, reply, null, `The sign-in name ${taken.error.issues[0]?.message}.`)
    }
    if (taken.error.why === 'conflict') return show(request, reply, null, taken.error.says)
    return answered(taken)
  })

  app.post(
    '/counties/:county/organizations/:id/admission',
    { config, schema: { params } },
    async ({ context, caller, actor, params: { id } }, reply) => {
      answered(await admitOrganization(context, caller, actor.county, id))
      return reply.redirect(organizationsPath(actor.county), 303)
    },
  )

  app.post(
    '/counties/:county/organizations/:id/withdrawal',
    { config, schema: { params } },
    async ({ context, caller, actor, params: { id } }, reply) => {
      answered(await withdrawAdmission(context, caller, actor.county, id))
      return reply.redirect(organizationsPath(actor.county), 303)
    },
  )
}

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  link: string | null,
  fault: string | null,
): Promise<FastifyReply> {
  const { context, caller, actor } = request
  const admissions = await listAdmissions(context, caller, actor.county)
  const body = organizationsView({ county: actor.county, admissions, link, fault })
  return reply.page({ title: 'Organizations', body, secret: link !== null }, fault ? 422 : 200)
}
