import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import {
  admitOrganisation,
  listAdmissions,
  readOwnOrganisation,
  takeInOrganisation,
  withdrawAdmission,
} from '../../../operations/access/organisations.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { invitation, label, presentInvitation, signInName } from '../people/shapes.ts'
import { countyPath, idPath } from '../shapes/paths.ts'
import { admission, ownOrganisation, presentAdmission, presentOwn } from './shapes.ts'

const tags = ['Organisations']
const administering = { access: ['reviewer'], manages: true, administers: true } as const

export const organisations: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/organisations/own',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'Your organisation, and where it works',
        tags,
        operationId: 'readOwnOrganisation',
        response: { 200: ownOrganisation },
      },
    },
    async ({ context, caller }) => presentOwn(await readOwnOrganisation(context, caller)),
  )

  app.get(
    '/counties/:county/organisations',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'Who works in the county, or did',
        tags,
        operationId: 'listOrganisations',
        params: countyPath,
        response: { 200: z.object({ items: z.array(admission) }) },
      },
    },
    async ({ context, caller, params }) => ({
      items: (await listAdmissions(context, caller, params.county)).map(presentAdmission),
    }),
  )

  app.post(
    '/counties/:county/organisations',
    {
      config: administering,
      schema: {
        summary: 'Take a firm or an agent’s office into the county',
        description: 'With a first person, who is invited to look after it.',
        tags,
        operationId: 'takeInOrganisation',
        params: countyPath,
        body: z
          .object({
            kind: z.enum(['firm', 'agent']),
            name: label.meta({ examples: ['Heron Inspections'] }),
            administrator: z.object({ signInName, label }),
          })
          .meta({
            id: 'NewOrganisation',
            examples: [
              {
                kind: 'firm',
                name: 'Heron Inspections',
                administrator: { signInName: 'office@heron.example', label: 'office' },
              },
            ],
          }),
        response: { 201: z.object({ organisation: admission, invitation }) },
      },
    },
    async (request, reply) => {
      const { context, caller, params, body } = request
      const taken = answered(await takeInOrganisation(context, caller, params.county, body))
      reply.code(201).header('cache-control', 'no-store')
      return {
        organisation: presentAdmission(taken.admission),
        invitation: presentInvitation(request, taken.invitation),
      }
    },
  )

  app.put(
    '/counties/:county/organisations/:id',
    {
      config: administering,
      schema: {
        summary: 'Admit an organisation of another county, or let one back in',
        description: 'By the id that it knows itself by. Admitting one that is admitted changes nothing.',
        tags,
        operationId: 'admitOrganisation',
        params: idPath,
        response: { 200: admission },
      },
    },
    async ({ context, caller, params }) =>
      presentAdmission(answered(await admitOrganisation(context, caller, params.county, params.id))),
  )

  app.delete(
    '/counties/:county/organisations/:id',
    {
      config: administering,
      schema: {
        summary: 'Withdraw an admission',
        description: 'Nobody of it works in the county from then on; what it handed in stays, with its name.',
        tags,
        operationId: 'withdrawAdmission',
        params: idPath,
        response: { 204: z.undefined() },
      },
    },
    async ({ context, caller, params }, reply) => {
      answered(await withdrawAdmission(context, caller, params.county, params.id))
      reply.code(204)
      return undefined
    },
  )
}
