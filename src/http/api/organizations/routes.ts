import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import {
  admitOrganization,
  listAdmissions,
  readOwnOrganization,
  takeInOrganization,
  withdrawAdmission,
} from '../../../operations/access/organizations.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { invitation, label, presentInvitation, signInName } from '../people/shapes.ts'
import { countyPath, idPath } from '../shapes/paths.ts'
import { admission, ownOrganization, presentAdmission, presentOwn } from './shapes.ts'

const tags = ['Organizations']
const administering = { access: ['reviewer'], manages: true, administers: true } as const

export const organizations: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/organizations/own',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'Your organization and its counties',
        tags,
        operationId: 'readOwnOrganization',
        response: { 200: ownOrganization },
      },
    },
    async ({ context, caller }) => presentOwn(await readOwnOrganization(context, caller)),
  )

  app.get(
    '/counties/:county/organizations',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'The organizations of the county, with former ones',
        tags,
        operationId: 'listOrganizations',
        params: countyPath,
        response: { 200: z.object({ items: z.array(admission) }) },
      },
    },
    async ({ context, caller, params }) => ({
      items: (await listAdmissions(context, caller, params.county)).map(presentAdmission),
    }),
  )

  app.post(
    '/counties/:county/organizations',
    {
      config: administering,
      schema: {
        summary: 'Add a firm or an agent’s office to the county',
        description: 'With a first person, who is invited as its administrator.',
        tags,
        operationId: 'takeInOrganization',
        params: countyPath,
        body: z
          .object({
            kind: z.enum(['firm', 'agent']),
            name: label.meta({ examples: ['Heron Inspections'] }),
            administrator: z.object({ signInName, label }),
          })
          .meta({
            id: 'NewOrganization',
            examples: [
              {
                kind: 'firm',
                name: 'Heron Inspections',
                administrator: { signInName: 'office@heron.example', label: 'office' },
              },
            ],
          }),
        response: { 201: z.object({ organization: admission, invitation }) },
      },
    },
    async (request, reply) => {
      const { context, caller, params, body } = request
      const taken = answered(await takeInOrganization(context, caller, params.county, body))
      reply.code(201).header('cache-control', 'no-store')
      return {
        organization: presentAdmission(taken.admission),
        invitation: presentInvitation(request, taken.invitation),
      }
    },
  )

  app.put(
    '/counties/:county/organizations/:id',
    {
      config: administering,
      schema: {
        summary: 'Admit an organization of another county, or let one back in',
        description: 'By the id that it knows itself by. Admitting one that is admitted changes nothing.',
        tags,
        operationId: 'admitOrganization',
        params: idPath,
        response: { 200: admission },
      },
    },
    async ({ context, caller, params }) =>
      presentAdmission(answered(await admitOrganization(context, caller, params.county, params.id))),
  )

  app.delete(
    '/counties/:county/organizations/:id',
    {
      config: administering,
      schema: {
        summary: 'Remove an organization’s access',
        description: 'Its people lose access to the county at once. What it submitted stays, with its name.',
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
