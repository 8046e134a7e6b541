import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { changePerson, type PersonChange } from '../../../../operations/access/change-person.ts'
import { erasePerson } from '../../../../operations/access/erase-person.ts'
import { invitePerson } from '../../../../operations/access/invite-person.ts'
import { listPeople } from '../../../../operations/access/read-people.ts'
import { reinvitePerson } from '../../../../operations/access/reinvite-person.ts'
import { invitationAddress } from '../../../access/own-address.ts'
import { ALL_ROLES } from '../../../access/require-caller.ts'
import { answered } from '../../../api/answer.ts'
import { label } from '../../../api/people/shapes.ts'
import { peoplePath } from '../addresses.ts'
import { typed } from '../typed.ts'
import { peopleView } from './view.ts'

const config = { access: ALL_ROLES, manages: true, administers: true } as const
const params = z.object({ person: z.guid() })
const CHANGES: readonly PersonChange[] = [
  'suspend',
  'let-back-in',
  'give-administration',
  'take-administration',
  'take-off-second-step',
]

/** The people of an organization, for its administrators. */
export const peoplePages: FastifyPluginAsyncZod = async (app) => {
  app.get(peoplePath, { config }, async (request, reply) => show(request, reply, null, null))

  app.post(peoplePath, { config }, async (request, reply) => {
    const { context, caller, body } = request
    const named = label.safeParse(typed(body, 'label'))
    if (!named.success) return show(request, reply, null, 'Enter what the account is for.')
    const administers = typed(body, 'administers') === 'yes'
    const asked = { signInName: typed(body, 'name'), label: named.data, administers }
    const made = await invitePerson(context, caller, asked)
    if (made.ok) return show(request, reply, invitationAddress(request, made.value.invitation.secret), null)
    if (made.error.why === 'invalid') {
      return show(request, reply, null, `The sign-in name ${made.error.issues[0]?.message}.`)
    }
    if (made.error.why === 'conflict') return show(request, reply, null, made.error.says)
    return answered(made)
  })

  app.post(`${peoplePath}/:person/invitation`, { config, schema: { params } }, async (request, reply) => {
    const made = answered(await reinvitePerson(request.context, request.caller, request.params.person))
    return show(request, reply, invitationAddress(request, made.secret), null)
  })

  app.post(
    `${peoplePath}/:person/change`,
    { config, schema: { params } },
    async ({ context, caller, params: { person }, body }, reply) => {
      const change = CHANGES.find((it) => it === typed(body, 'change'))
      if (change) answered(await changePerson(context, caller, person, change))
      return reply.redirect(peoplePath, 303)
    },
  )

  app.post(
    `${peoplePath}/:person/erasure`,
    { config, schema: { params } },
    async ({ context, caller, params: { person } }, reply) => {
      answered(await erasePerson(context, caller, person))
      return reply.redirect(peoplePath, 303)
    },
  )
}

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  link: string | null,
  fault: string | null,
): Promise<FastifyReply> {
  const { context, caller } = request
  const people = await listPeople(context, caller)
  const body = peopleView({ people, own: caller.account, link, fault })
  return reply.page({ title: 'People', body, secret: link !== null }, fault ? 422 : 200)
}
