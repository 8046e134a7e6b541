import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { listCounties, readCounty } from '../../../operations/counties/read-counties.ts'
import type { County } from '../../../store/counties.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { tagRevision } from '../../plugins/entity-tag.ts'
import { answered } from '../answer.ts'
import { countyPath } from '../shapes/paths.ts'

const county = z
  .object({
    id: z.string(),
    name: z.string(),
    rulePack: z.string().meta({ description: 'Whose rules it uses: see /v1/rules' }),
    parcelNumbers: z.object({
      groups: z.array(z.number()).meta({ description: 'Lengths of the groups of digits' }),
      separator: z.string(),
      example: z.string(),
    }),
  })
  .meta({
    id: 'County',
    examples: [
      {
        id: 'quillback',
        name: 'Quillback County',
        rulePack: 'quillback',
        parcelNumbers: { groups: [2, 4, 4], separator: '-', example: '07-0412-0031' },
      },
    ],
  })

const present = ({ id, name, rulePack, parcelFormat }: County): z.output<typeof county> => ({
  id,
  name,
  rulePack,
  parcelNumbers: {
    groups: [...parcelFormat.groups],
    separator: parcelFormat.separator,
    example: parcelFormat.example,
  },
})

export const counties: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'The counties that your token works in',
        tags: ['Counties'],
        operationId: 'listCounties',
        response: { 200: z.object({ items: z.array(county) }) },
      },
    },
    async ({ context, caller }) => ({ items: (await listCounties(context, caller.counties)).map(present) }),
  )

  app.get(
    '/counties/:county',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'A county',
        tags: ['Counties'],
        operationId: 'readCounty',
        params: countyPath,
        response: { 200: county },
      },
    },
    async ({ context, params }, reply) => {
      const found = answered(await readCounty(context, params.county))
      tagRevision(reply, found.revision)
      return present(found)
    },
  )
}
