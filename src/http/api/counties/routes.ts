import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { listCounties, readCounty } from '../../../operations/counties/read-counties.ts'
import type { ParcelSpelling } from '../../../reading/parcel-number.ts'
import type { County } from '../../../store/counties.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { tagRevision } from '../../plugins/entity-tag.ts'
import { answered } from '../answer.ts'
import { countyPath } from '../shapes/paths.ts'

const spelling = z.object({
  groups: z.array(z.number()).meta({ description: 'Lengths of the groups' }),
  letters: z
    .array(z.number())
    .optional()
    .meta({ description: 'Which groups, from 0, may hold letters; the others hold digits' }),
  separator: z.string(),
  example: z.string(),
})

const county = z
  .object({
    id: z.string(),
    name: z.string(),
    rulePack: z.string().meta({ description: 'Whose rules it uses: see /v1/rules' }),
    parcelNumbers: spelling.extend({
      others: z
        .array(spelling)
        .optional()
        .meta({ description: 'Other ways of writing them that are in use' }),
    }),
    keepsNames: z.boolean().meta({
      description: 'Whether names of owners and installers stay with what is read of documents',
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
        keepsNames: false,
      },
    ],
  })

const presentSpelling = ({ groups, letters, separator, example }: ParcelSpelling) => ({
  groups: [...groups],
  ...(letters ? { letters: [...letters] } : {}),
  separator,
  example,
})

const present = ({ id, name, rulePack, parcelFormat, keepsNames }: County): z.output<typeof county> => ({
  id,
  name,
  rulePack,
  parcelNumbers: {
    ...presentSpelling(parcelFormat),
    ...(parcelFormat.others ? { others: parcelFormat.others.map(presentSpelling) } : {}),
  },
  keepsNames,
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
