import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { activateForm, type FormChanged, withdrawForm } from '../../../operations/forms/change-form.ts'
import { listForms, readForm } from '../../../operations/forms/read-forms.ts'
import type { Answer } from '../../../operations/refusal.ts'
import { FORM_STATES } from '../../../store/taught-forms.ts'
import { answered } from '../../api/answer.ts'
import { typedBy, versionIn } from '../documents/typed.ts'
import { formPath } from './addresses.ts'
import { formView } from './form-view.ts'
import { listView } from './list-view.ts'

const config = { access: ['reviewer' as const] }
const params = z.object({ county: z.string(), id: z.guid('is not an id') })
const LISTED = 50

/** The form layouts learned from confirmed documents, and the page where each is checked, turned on and off. */
export const formPages: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/forms',
    {
      config,
      schema: {
        querystring: z.object({
          state: z.enum(FORM_STATES).catch('proposed'),
          after: z.guid().optional().catch(undefined),
        }),
      },
    },
    async ({ context, actor, query: { state, after } }, reply) => {
      const rows = await listForms(context, actor, state, after, LISTED + 1)
      const forms = rows.slice(0, LISTED)
      const next = rows.length > LISTED ? forms.at(-1)!.id : null
      return reply.page({
        title: 'Learned form layouts',
        body: listView({ county: actor.county, state, forms, next }),
      })
    },
  )

  app.get('/counties/:county/forms/:id', { config, schema: { params } }, (request, reply) =>
    show(request, reply, request.params.id, { typed: null, fault: null }, 200),
  )

  app.post(
    '/counties/:county/forms/:id/activation',
    { config, schema: { params } },
    async (request, reply) => {
      const { context, actor, params: at, body } = request
      const typed = typedBy(body)
      const name = typed.name ?? ''
      const made = await activateForm(context, actor, { form: at.id, version: versionIn(typed), name })
      return settled(request, reply, at.id, made, name)
    },
  )

  app.post(
    '/counties/:county/forms/:id/withdrawal',
    { config, schema: { params } },
    async (request, reply) => {
      const { context, actor, params: at, body } = request
      const made = await withdrawForm(context, actor, { form: at.id, version: versionIn(typedBy(body)) })
      return settled(request, reply, at.id, made, null)
    },
  )
}

/** Back to the form as it stands; a button pressed twice did its work the first time. */
function settled(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
  made: Answer<FormChanged>,
  typed: string | null,
): FastifyReply | Promise<FastifyReply> {
  if (made.ok) return reply.redirect(formPath(request.actor.county, id), 303)
  const { error } = made
  switch (error.why) {
    case 'invalid':
      return show(request, reply, id, { typed, fault: 'Enter a name of at most 80 characters.' }, 422)
    case 'stale':
    case 'conflict': {
      const fault =
        'Someone else changed this layout while you had it open. Nothing was done. Please check it again.'
      return show(request, reply, id, { typed, fault }, 409)
    }
    default:
      answered(made)
      return reply
  }
}

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
  came: { readonly typed: string | null; readonly fault: string | null },
  status: number,
): Promise<FastifyReply> {
  const { context, actor } = request
  const read = answered(await readForm(context, actor, id))
  const body = formView({ county: actor.county, read, ...came })
  return reply.page({ title: read.form.name, body }, status)
}
