import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readCounty } from '../../../operations/counties/read-counties.ts'
import { findParcels } from '../../../operations/parcels/find-parcels.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../../api/answer.ts'
import { parcelPath } from '../layout/addresses.ts'
import { listTitle, presentFound } from './present.ts'
import { searchList, searchNothing, searchStart } from './view.ts'

const MOST = 30

const query = z.object({
  q: z
    .string()
    .max(200, 'at most 200 characters')
    .refine(
      (text) => text.isWellFormed() && !text.includes('\u0000'),
      'contains characters that cannot be stored',
    )
    .default('')
    .transform((text) => text.trim()),
})

export const search: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/search',
    { config: { access: ALL_ROLES }, schema: { querystring: query } },
    async ({ context, actor, query: { q: asked } }, reply) => {
      const { name, parcelFormat } = answered(await readCounty(context, actor.county))
      const { example } = parcelFormat
      if (asked === '') return reply.page({ title: `Find a parcel in ${name}`, body: searchStart(example) })
      const found = presentFound(await findParcels(context, actor, asked, MOST))
      switch (found.to) {
        case 'parcel': {
          const came = found.by === 'number' ? '' : `?asked=${encodeURIComponent(asked)}&by=${found.by}`
          return reply.redirect(`${parcelPath(actor.county, found.number)}${came}`, 303)
        }
        case 'list':
          return reply.page({
            title: `Parcels for ${asked}`,
            asked,
            body: searchList(actor.county, listTitle(asked, found.by), found.hits),
          })
        case 'nothing':
          return reply.page({ title: 'Nothing found', asked, body: searchNothing(asked, example) })
      }
    },
  )
}
