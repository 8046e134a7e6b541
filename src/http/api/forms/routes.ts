import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { activateForm, bringForm, withdrawForm } from '../../../operations/forms/change-form.ts'
import { listForms, readForm } from '../../../operations/forms/read-forms.ts'
import { withoutDropped } from '../../../reading/family/witness.ts'
import { FORM_STATES } from '../../../store/taught-forms.ts'
import { tagRevision, versionIfSent } from '../../plugins/entity-tag.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { id } from '../shapes/basics.ts'
import { countyPath, idPath } from '../shapes/paths.ts'
import { exportedForm, form, formInList, presentForm, presentFormInList } from './shapes.ts'

const tags = ['Forms']
const changed = z.object({ form: formInList, job: id })

/** Forms that confirmed papers taught: looked at, taken up, withdrawn, carried elsewhere. */
export const forms: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/forms',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'The learned form layouts, in the order they were learned',
        description: 'After three confirmed documents with one form, its layout is proposed.',
        tags,
        operationId: 'listForms',
        params: countyPath,
        querystring: z.object({
          ...pageQuery,
          state: z
            .enum(FORM_STATES)
            .optional()
            .meta({ examples: ['proposed'] }),
        }),
        response: { 200: pageOf(formInList) },
      },
    },
    async (request, reply) => {
      const { context, actor, query } = request
      const after = cursorFrom(request, z.guid())
      const rows = await listForms(context, actor, query.state, after, query.limit + 1)
      return pageFrom(request, reply, rows, (row) => row.id, presentFormInList)
    },
  )

  app.post(
    '/counties/:county/forms',
    {
      config: { access: ['reviewer'], idempotent: true },
      schema: {
        summary: 'Import a form layout from another system',
        description: 'It is proposed, as if learned here.',
        tags,
        operationId: 'bringForm',
        params: countyPath,
        body: exportedForm,
        response: { 201: formInList },
      },
    },
    async ({ context, actor, body }, reply) => {
      const made = answered(await bringForm(context, actor, body))
      reply.code(201).header('location', `/v1/counties/${actor.county}/forms/${made.id}`)
      return presentFormInList(made)
    },
  )

  app.get(
    '/counties/:county/forms/:id',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'A learned form layout: its printed words, its fields with their places, and its documents',
        tags,
        operationId: 'readForm',
        params: idPath,
        response: { 200: form },
      },
    },
    async ({ context, actor, params }, reply) => {
      const read = answered(await readForm(context, actor, params.id))
      tagRevision(reply, read.form.revision)
      return presentForm(read)
    },
  )

  app.get(
    '/counties/:county/forms/:id/export',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'A learned form layout, to import in another system',
        description: 'Printed words and places only, without any document’s values.',
        tags,
        operationId: 'exportForm',
        params: idPath,
        response: { 200: exportedForm },
      },
    },
    async ({ context, actor, params }, reply) => {
      const { form: whole, witnessed } = answered(await readForm(context, actor, params.id))
      const { name } = whole
      const taught = withoutDropped(whole.taught, witnessed)
      reply.header('content-disposition', `attachment; filename="form-${params.id}.json"`)
      return { name, taught }
    },
  )

  app.post(
    '/counties/:county/forms/:id/activation',
    {
      config: { access: ['reviewer'], idempotent: true },
      schema: {
        summary: 'Start using a form layout, under a name',
        description:
          'New documents are read with it, and those to be confirmed are read again: the answer names the job. With ' +
          'If-Match, only the version that was read is used.',
        tags,
        operationId: 'activateForm',
        params: idPath,
        body: z
          .strictObject({ name: z.string().max(200).optional() })
          .meta({ id: 'TaughtFormTakingUp', examples: [{ name: 'Installation record, 1972' }] }),
        response: { 200: changed },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const asked = { form: params.id, version: versionIfSent(request), name: body.name }
      const made = answered(await activateForm(context, actor, asked))
      tagRevision(reply, made.form.revision)
      return { form: presentFormInList(made.form), job: made.job }
    },
  )

  app.post(
    '/counties/:county/forms/:id/withdrawal',
    {
      config: { access: ['reviewer'], idempotent: true },
      schema: {
        summary: 'Stop using a form layout',
        description:
          'It is kept and can be used again. Documents to be confirmed are read again without it: the answer names the ' +
          'job. Confirmed permits do not change.',
        tags,
        operationId: 'withdrawForm',
        params: idPath,
        body: z.strictObject({}).meta({ id: 'TaughtFormWithdrawal', examples: [{}] }),
        response: { 200: changed },
      },
    },
    async (request, reply) => {
      const { context, actor, params } = request
      const made = answered(
        await withdrawForm(context, actor, { form: params.id, version: versionIfSent(request) }),
      )
      tagRevision(reply, made.form.revision)
      return { form: presentFormInList(made.form), job: made.job }
    },
  )
}
