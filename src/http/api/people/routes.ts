import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { changePerson, type PersonChange } from '../../../operations/access/change-person.ts'
import { erasePerson } from '../../../operations/access/erase-person.ts'
import { exportPerson } from '../../../operations/access/export-person.ts'
import { invitePerson } from '../../../operations/access/invite-person.ts'
import { listPeople, readPerson } from '../../../operations/access/read-people.ts'
import { reinvitePerson } from '../../../operations/access/reinvite-person.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { personData, presentData } from './data-shapes.ts'
import {
  invitation,
  label,
  person,
  personPath,
  presentInvitation,
  presentPerson,
  signInName,
} from './shapes.ts'

const tags = ['People']
const administering = { access: ALL_ROLES, manages: true, administers: true } as const
const own = { access: ALL_ROLES, manages: true } as const

export const people: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/people',
    {
      config: administering,
      schema: {
        summary: 'The people of your organization',
        tags,
        operationId: 'listPeople',
        response: { 200: z.object({ items: z.array(person) }) },
      },
    },
    async ({ context, caller }) => ({ items: (await listPeople(context, caller)).map(presentPerson) }),
  )

  app.post(
    '/people',
    {
      config: administering,
      schema: {
        summary: 'Invite a person to your organization',
        description:
          'Returns the link with which they choose a password. Do not keep a copy; you can get a new link at any time.',
        tags,
        operationId: 'invitePerson',
        body: z.object({ signInName, label, administers: z.boolean().default(false) }).meta({
          id: 'NewPerson',
          examples: [{ signInName: 'crew.one@heron.example', label: 'crew one', administers: false }],
        }),
        response: { 201: z.object({ person, invitation }) },
      },
    },
    async (request, reply) => {
      const invited = answered(await invitePerson(request.context, request.caller, request.body))
      reply
        .code(201)
        .header('location', `/v1/people/${invited.person.id}`)
        .header('cache-control', 'no-store')
      return {
        person: presentPerson(invited.person),
        invitation: presentInvitation(request, invited.invitation),
      }
    },
  )

  app.get(
    '/people/:person',
    {
      config: own,
      schema: {
        summary: 'Yourself, or a person of your organization',
        tags,
        operationId: 'readPerson',
        params: personPath,
        response: { 200: person },
      },
    },
    async ({ context, caller, params }) =>
      presentPerson(answered(await readPerson(context, caller, params.person))),
  )

  app.post(
    '/people/:person/invitation',
    {
      config: administering,
      schema: {
        summary: 'A new link to choose a password',
        description: 'For someone who lost the first link or the password. Earlier links stop working.',
        tags,
        operationId: 'reinvitePerson',
        params: personPath,
        response: { 201: invitation },
      },
    },
    async (request, reply) => {
      const made = answered(await reinvitePerson(request.context, request.caller, request.params.person))
      reply.code(201).header('cache-control', 'no-store')
      return presentInvitation(request, made)
    },
  )

  const change = (
    method: 'PUT' | 'DELETE',
    part: 'suspension' | 'administration' | 'second-step',
    does: PersonChange,
    summary: string,
    operationId: string,
  ) =>
    app.route({
      method,
      url: `/people/:person/${part}`,
      config: administering,
      schema: { summary, tags, operationId, params: personPath, response: { 200: person } },
      handler: async ({ context, caller, params }) =>
        presentPerson(
          answered(await changePerson(context, caller, (params as z.output<typeof personPath>).person, does)),
        ),
    })

  change(
    'PUT',
    'suspension',
    'suspend',
    'Suspend a person: their tokens and sessions stop working',
    'suspend',
  )
  change('DELETE', 'suspension', 'let-back-in', 'Restore the access of a suspended person', 'letBackIn')
  change(
    'PUT',
    'administration',
    'give-administration',
    'Make a person an administrator',
    'giveAdministration',
  )
  change(
    'DELETE',
    'administration',
    'take-administration',
    'Remove a person as administrator',
    'takeAdministration',
  )
  change(
    'DELETE',
    'second-step',
    'take-off-second-step',
    'Turn off two-step sign-in for a person who lost it',
    'takeOffSecondStep',
  )

  app.get(
    '/people/:person/data',
    {
      config: own,
      schema: {
        summary: 'All data kept about a person',
        description: 'Yourself, or a person of the organization you administer, to pass it on to them.',
        tags,
        operationId: 'exportPerson',
        params: personPath,
        response: { 200: personData },
      },
    },
    async ({ context, caller, params }, reply) => {
      const data = answered(await exportPerson(context, caller, params.person))
      reply.header('cache-control', 'no-store')
      return presentData(data)
    },
  )

  app.delete(
    '/people/:person',
    {
      config: administering,
      schema: {
        summary: 'Erase a person’s data',
        description:
          'Deletes sign-in, codes, sessions and names. What a county must keep stays without a name. This cannot be ' +
          'undone.',
        tags,
        operationId: 'erasePerson',
        params: personPath,
        response: { 204: z.undefined() },
      },
    },
    async ({ context, caller, params }, reply) => {
      answered(await erasePerson(context, caller, params.person))
      reply.code(204)
      return undefined
    },
  )
}
