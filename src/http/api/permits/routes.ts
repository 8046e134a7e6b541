import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { correctPermit } from '../../../operations/permits/correct-permit.ts'
import { enterPermit } from '../../../operations/permits/enter-permit.ts'
import { readPermit } from '../../../operations/permits/read-permit.ts'
import { line } from '../../../reading/entry/fields.ts'
import { requireVersion, tagRevision } from '../../plugins/entity-tag.ts'
import { answered } from '../answer.ts'
import { id } from '../shapes/basics.ts'
import { consequence, presentConsequence } from '../shapes/changes.ts'
import { permitBody, permitExample } from '../shapes/entries.ts'
import { idPath, parcelPath } from '../shapes/paths.ts'
import { systemAskedFor, systemQuery } from '../shapes/system.ts'
import { filingChange, presentFilingChange } from './filing.ts'
import { permit, permitRevision, presentPermit, presentRevision, suspectedDuplicates } from './shapes.ts'

const written = z.object({ permit, consequence, suspectedDuplicates })

const correction = z
  .strictObject({
    record: permitBody,
    reason: line(500).meta({ description: 'The reason for the correction; kept with the revision' }),
    system: systemAskedFor
      .optional()
      .meta({ description: 'The system that it builds, where it is another than was said' }),
  })
  .meta({
    id: 'PermitCorrection',
    examples: [{ record: { ...permitExample, bedrooms: 4 }, reason: 'The 3 is a 4: compare the sketch.' }],
  })

export const permits: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/parcels/:parcel/permits',
    {
      config: { access: ['reviewer'], idempotent: true },
      schema: {
        summary: 'Enter a permit by hand',
        description:
          'Adds it to the parcel’s file and reconciles the parcel in the same step. The answer says what appeared, ' +
          'changed, went away or came back. A permit of the same kind and number that is on file is a 409; those of the same number ' +
          'in other parcels’ files are named in `suspectedDuplicates`. Where the parcel has several systems, `system` says which.',
        tags: ['Permits'],
        operationId: 'enterPermit',
        params: parcelPath,
        querystring: systemQuery,
        body: permitBody,
        response: { 201: written },
      },
    },
    async ({ context, actor, params, query, body }, reply) => {
      const entered = answered(await enterPermit(context, actor, params.parcel, body, query.system))
      reply.code(201).header('location', `/v1/counties/${actor.county}/permits/${entered.permit.id}`)
      tagRevision(reply, entered.permit.revision)
      return {
        permit: presentPermit(entered.permit),
        consequence: presentConsequence(entered.reconciled),
        suspectedDuplicates: [...entered.alike],
      }
    },
  )

  app.get(
    '/counties/:county/permits/:id',
    {
      config: { access: ['reviewer', 'firm'] },
      schema: {
        summary: 'A permit, with every revision it went through',
        description:
          'A permit that was merged into another is still here; `Link: rel="canonical"` leads to the one that stays.',
        tags: ['Permits'],
        operationId: 'readPermit',
        params: idPath,
        response: {
          200: z.object({
            permit,
            revisions: z.array(permitRevision),
            filingChanges: z.array(filingChange).meta({ description: 'Oldest first' }),
            holds: z.array(id).meta({ description: 'The permits that were merged into this one' }),
          }),
        },
      },
    },
    async ({ context, actor, params }, reply) => {
      const read = answered(await readPermit(context, actor, params.id))
      tagRevision(reply, read.permit.revision)
      if (read.permit.mergedInto) {
        reply.header(
          'link',
          `</v1/counties/${actor.county}/permits/${read.permit.mergedInto}>; rel="canonical"`,
        )
      }
      return {
        permit: presentPermit(read.permit),
        revisions: read.revisions.map(presentRevision),
        filingChanges: read.filingChanges.map(presentFilingChange),
        holds: [...read.holds],
      }
    },
  )

  app.put(
    '/counties/:county/permits/:id',
    {
      config: { access: ['reviewer'], replaces: true },
      schema: {
        summary: 'Correct how a permit was read',
        description:
          'Makes a new revision with a reason; nothing is deleted. Unchanged values keep their source. The parcel is ' +
          'reconciled in the same step.',
        tags: ['Permits'],
        operationId: 'correctPermit',
        params: idPath,
        body: correction,
        response: { 200: written },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const version = requireVersion(request)
      const corrected = answered(await correctPermit(context, actor, { id: params.id, version, ...body }))
      tagRevision(reply, corrected.permit.revision)
      return {
        permit: presentPermit(corrected.permit),
        consequence: presentConsequence(corrected.reconciled),
        suspectedDuplicates: [...corrected.alike],
      }
    },
  )
}
