import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { listPacks, readPack } from '../../../operations/rules/read-packs.ts'
import { answered } from '../answer.ts'
import { pack, packInList, presentPack, presentPackInList } from './shapes.ts'

const tags = ['Rules']
const word = z.string().regex(/^[a-z0-9][a-z0-9-]{0,60}$/, 'is not part of the name of a pack')

export const rules: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/rules',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'The rule packs',
        description: 'Each pack holds one jurisdiction’s rules on one topic, every value with its citations.',
        tags,
        operationId: 'listRulePacks',
        response: { 200: z.object({ items: z.array(packInList) }) },
      },
    },
    async ({ context }) => ({ items: listPacks(context).map(presentPackInList) }),
  )

  app.get(
    '/rules/:place/:topic',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'A rule pack',
        description: 'Every dated value, where it is printed and whether its source was verified.',
        tags,
        operationId: 'readRulePack',
        params: z.object({
          place: word.meta({ description: 'Whose rules', examples: ['quillback'] }),
          topic: word.meta({ examples: ['code'] }),
        }),
        response: { 200: pack },
      },
    },
    async ({ context, params }) =>
      presentPack(answered(readPack(context, `${params.place}/${params.topic}`))),
  )
}
