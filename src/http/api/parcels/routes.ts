import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { findParcels, listParcels } from '../../../operations/parcels/find-parcels.ts'
import { readAsBuilt } from '../../../operations/parcels/read-as-built.ts'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import { readStatus } from '../../../operations/parcels/read-status.ts'
import { dateEntry } from '../../../reading/entry/quantity.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { asBuilt, presentAsBuilt } from '../shapes/as-built.ts'
import { countyPath, parcelPath } from '../shapes/paths.ts'
import { presentStatus, status } from '../shapes/status.ts'
import { systemQuery } from '../shapes/system.ts'
import { parcel, parcelBasics, parcelFound, presentBasics, presentParcel } from './shapes.ts'

const tags = ['Parcels']

const search = z.object({
  ...pageQuery,
  q: z
    .string()
    .trim()
    .min(1, 'write a number or an address, or leave it out')
    .max(200, 'at most 200 characters')
    .refine(
      (text) => text.isWellFormed() && !text.includes('\u0000'),
      'contains characters that cannot be stored',
    )
    .optional()
    .meta({
      description: 'A number in any spelling, an old number, or an address in part or misspelled',
      examples: ['7 412 31'],
    }),
})

export const parcels: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'Find parcels, or list them',
        description:
          'With `q`: the best matches first, at most `limit`, on one page. Without: all, by number.',
        tags,
        operationId: 'findParcels',
        params: countyPath,
        querystring: search,
        response: { 200: pageOf(parcelFound) },
      },
    },
    async (request, reply) => {
      const { context, actor, query } = request
      if (query.q !== undefined) {
        const found = await findParcels(context, actor, query.q, query.limit)
        const items = found.map(({ parcel: it, matched, says, score }) => ({
          ...presentBasics(it),
          match: { by: matched, says, score },
        }))
        return { items, next: null }
      }
      const after = cursorFrom(request, z.string().max(80))
      const rows = await listParcels(context, actor, after, query.limit + 1)
      return pageFrom(
        request,
        reply,
        rows,
        ({ number }) => number,
        (it) => ({ ...presentBasics(it), match: null }),
      )
    },
  )

  app.get(
    '/counties/:county/parcels/:parcel',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'A parcel',
        description:
          'An agent gets only the status; a firm gets its own findings; a reviewer gets everything. Where the parcel has ' +
          'several systems the file is that of `system`, else of the first.',
        tags,
        operationId: 'readParcel',
        params: parcelPath,
        querystring: systemQuery,
        response: { 200: parcel },
      },
    },
    async ({ context, actor, params, query }) =>
      presentParcel(answered(await readParcel(context, actor, params.parcel, query.system)), actor.role),
  )

  app.get(
    '/counties/:county/parcels/:parcel/as-built',
    {
      config: { access: ['reviewer', 'firm'] },
      schema: {
        summary: 'What should be in the ground on a day',
        description:
          'Approved permits folded in date order, then corrections, with where each value comes from.',
        tags,
        operationId: 'readAsBuilt',
        params: parcelPath,
        querystring: systemQuery.extend({
          on: dateEntry.optional().meta({ description: 'The day; default today', examples: ['1985-06-01'] }),
        }),
        response: { 200: z.object({ parcel: parcelBasics, asBuilt }) },
      },
    },
    async ({ context, actor, params, query }) => {
      const read = answered(await readAsBuilt(context, actor, params.parcel, query.on, query.system))
      return { parcel: presentBasics(read.parcel), asBuilt: presentAsBuilt(read.asBuilt) }
    },
  )

  app.get(
    '/counties/:county/parcels/:parcel/status',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'A parcel in one word and one sentence',
        description: 'What is outstanding, who acts next, and as of when. Contains nothing private.',
        tags,
        operationId: 'readStatus',
        params: parcelPath,
        response: { 200: z.object({ parcel: parcelBasics, status }) },
      },
    },
    async ({ context, actor, params }) => {
      const read = answered(await readStatus(context, actor, params.parcel))
      return { parcel: presentBasics(read.parcel), status: presentStatus(read.status) }
    },
  )
}
