import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { findPatterns } from '../../../operations/patterns/find-patterns.ts'
import { countyPath } from '../shapes/paths.ts'

const pattern = z
  .object({
    name: z.enum(['shortfalls-by-decade', 'unrecorded-work-by-street', 'misreads-by-form']),
    asks: z.string(),
    counts: z.string().meta({ description: 'What is counted' }),
    rows: z.array(
      z.object({
        group: z.string(),
        hits: z.int(),
        total: z.int(),
        elsewhereHits: z.int(),
        elsewhereTotal: z.int(),
        probability: z.number().meta({
          description:
            'Fisher’s exact test, two-sided: how often chance alone puts the counts at least this far apart',
        }),
        adjusted: z.number().meta({ description: 'The same, raised for the number of groups (Holm)' }),
      }),
    ),
    tooFew: z.int().meta({ description: 'Groups too small to show' }),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'Pattern', description: 'Where differences gather, with the counts and an exact test' })

export const patterns: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/patterns',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'Where differences are more common in the county',
        description:
          'Decades with more shortfalls, streets with more unrecorded work, forms with more misreads. Each group is ' +
          'compared with all the others. Nobody is named.',
        tags: ['Patterns'],
        operationId: 'findPatterns',
        params: countyPath,
        response: { 200: z.object({ patterns: z.array(pattern) }) },
      },
    },
    async ({ context, actor }) => ({
      patterns: (await findPatterns(context, actor)).map(({ rows, cautions, ...rest }) => ({
        ...rest,
        rows: rows.map((row) => ({ ...row })),
        cautions: [...cautions],
      })),
    }),
  )
}
