import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { changeHowFiled } from '../../../operations/permits/change-filing.ts'
import { readPermitPage } from '../../../operations/permits/read-permit-page.ts'
import { readEntry } from '../../../reading/entry/read-entry.ts'
import { answered } from '../../api/answer.ts'
import { filingChangeBody } from '../../api/permits/filing.ts'
import { problem } from '../../problem.ts'
import { permitPath } from '../layout/addresses.ts'
import { bodyOf, faultsOf, typedBy } from './read-form.ts'
import { type FilingReturned, permitView } from './view.ts'

const params = z.object({ county: z.string(), id: z.guid('is not an id') })

/** A permit, and for reviewers the forms that change how it is filed. */
export const permitPages: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/permits/:id',
    { config: { access: ['reviewer', 'firm'] }, schema: { params } },
    async (request, reply) => show(request, reply, request.params.id, null, 200),
  )

  app.post(
    '/counties/:county/permits/:id/filing-changes',
    { config: { access: ['reviewer'] }, schema: { params } },
    async (request, reply) => {
      const { context, actor, params: at } = request
      const typed = typedBy(request.body)
      const version = Number(typed.version)
      if (typed.version === '' || !Number.isInteger(version)) throw problem('version-needed')
      const again = (faults: readonly string[], status: number) =>
        show(request, reply, at.id, { typed, faults }, status)
      const parsed = readEntry(filingChangeBody, bodyOf(typed))
      if (!parsed.ok) return again(faultsOf(parsed.error), 422)
      const { note = null, ...asked } = parsed.value
      const changed = await changeHowFiled(context, actor, { ...asked, note, id: at.id, version })
      if (changed.ok) return reply.redirect(permitPath(actor.county, at.id), 303)
      switch (changed.error.why) {
        case 'invalid':
          return again(faultsOf(changed.error.issues), 422)
        case 'conflict':
          return again([changed.error.says], 409)
        case 'stale':
          return again([CHANGED], 412)
        default:
          return answered(changed)
      }
    },
  )
}

const CHANGED =
  'Someone else changed this permit while you had it open. Review it as it is now, then try again.'

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
  returned: FilingReturned | null,
  status: number,
): Promise<FastifyReply> {
  const { context, actor } = request
  const page = answered(await readPermitPage(context, actor, id))
  const mayChange = actor.role === 'reviewer'
  const body = permitView({ county: actor.county, page, mayChange, returned })
  return reply.page({ title: `Permit ${page.permit.record.number}`, body }, status)
}
