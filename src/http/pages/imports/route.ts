import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { changeMapping } from '../../../operations/imports/change-mapping.ts'
import { mappingFaults } from '../../../operations/imports/check-mapping.ts'
import { listImports, listRejections, readImport } from '../../../operations/imports/read-import.ts'
import { startImport } from '../../../operations/imports/start-import.ts'
import { takeInFile } from '../../../operations/imports/take-in-file.ts'
import type { Import, Mapping } from '../../../store/imports.ts'
import { answered } from '../../api/answer.ts'
import { mappingBody } from '../../api/imports/shapes.ts'
import { formatOf, importForm, takeSentFile } from '../../api/imports/upload.ts'
import { importPath } from './addresses.ts'
import { importView, listView } from './view.ts'

const access = ['reviewer'] as const
const params = z.object({ county: z.string(), id: z.guid() })
const REFRESH_SECONDS = 2
const LISTED = 50

/** Files of many records: uploaded, mapped, tried, run, and the rows that were rejected. */
export const importPages: FastifyPluginAsyncZod = async (app) => {
  app.get('/counties/:county/imports', { config: { access } }, async ({ context, actor }, reply) =>
    reply.page({
      title: 'Imports',
      body: listView(actor.county, await listImports(context, actor, undefined, LISTED), null),
    }),
  )

  app.post(
    '/counties/:county/imports',
    { config: { access }, preValidation: takeSentFile },
    async ({ context, actor, body }, reply) => {
      const again = async (fault: string) => {
        const list = await listImports(context, actor, undefined, LISTED)
        return reply.page({ title: 'Imports', body: listView(actor.county, list, fault) }, 422)
      }
      const form = importForm.safeParse(body)
      if (!form.success) return again(importFault(form.error.issues[0]!))
      const { hash, bytes, fileName } = form.data.file
      const file = { kind: form.data.kind, format: formatOf(form.data), hash, bytes, fileName }
      const taken = await takeInFile(context, actor, file)
      if (!taken.ok && taken.error.why === 'invalid')
        return again(`The file ${taken.error.issues[0]!.message}.`)
      return reply.redirect(importPath(actor.county, answered(taken).id), 303)
    },
  )

  app.get(
    '/counties/:county/imports/:id',
    { config: { access }, schema: { params } },
    async ({ context, actor, params: { id } }, reply) => {
      const it = answered(await readImport(context, actor, id))
      const rejections = answered(await listRejections(context, actor, { id, after: 0, most: LISTED }))
      const faults = mappingFaults(it.kind, it.head, it.mapping)
      if (it.state === 'trying' || it.state === 'running') reply.header('refresh', String(REFRESH_SECONDS))
      return reply.page({
        title: 'Import',
        body: importView({ county: actor.county, it, faults, rejections }),
      })
    },
  )

  app.post(
    '/counties/:county/imports/:id/mapping',
    { config: { access }, schema: { params } },
    async ({ context, actor, params: { id }, body }, reply) => {
      const typed = (body ?? {}) as Readonly<Record<string, string>>
      const it = answered(await readImport(context, actor, id))
      const read = mappingBody.safeParse(mappingTyped(it, typed))
      const faults = read.success ? [] : read.error.issues
      const version = Number(typed.version)
      const changed = read.success
        ? await changeMapping(context, actor, { id, version, mapping: read.data })
        : null
      if (changed === null || (!changed.ok && changed.error.why === 'invalid')) {
        const told =
          changed !== null && !changed.ok && changed.error.why === 'invalid' ? changed.error.issues : faults
        const shown = { ...it, mapping: read.success ? read.data : it.mapping }
        const view = importView({ county: actor.county, it: shown, faults: told, rejections: [] })
        return reply.page({ title: 'Import', body: view }, 422)
      }
      answered(changed)
      return reply.redirect(importPath(actor.county, id), 303)
    },
  )

  for (const [word, trial] of [
    ['trial', true],
    ['run', false],
  ] as const) {
    app.post(
      `/counties/:county/imports/:id/${word}`,
      { config: { access }, schema: { params } },
      async ({ context, actor, params: { id } }, reply) => {
        answered(await startImport(context, actor, id, trial))
        return reply.redirect(importPath(actor.county, id), 303)
      },
    )
  }
}

/** What is wrong with an upload, for whoever sees a form. */
const importFault = ({ path, message }: z.core.$ZodIssue): string =>
  path[0] === 'file'
    ? 'Choose a file to upload.'
    : path[0] === 'kind'
      ? 'Choose the type of records.'
      : message

/** The form as the body that the same operation takes from a program. */
function mappingTyped({ head }: Import, typed: Readonly<Record<string, string>>): Mapping {
  return {
    columns: head.headings.map((column, index) => ({
      column,
      to: typed[`to.${index}`]?.trim() || null,
      unit: typed[`unit.${index}`] || null,
      values: pairsIn(typed[`values.${index}`]),
    })),
    always: pairsIn(typed.always),
  }
}

/** `NEW = new; REP = repair`; what has no equals sign is left for the mapping's own check to refuse. */
const pairsIn = (text = ''): Record<string, string> =>
  Object.fromEntries(
    text.split(';').flatMap((pair) => {
      if (pair.trim() === '') return []
      const at = pair.lastIndexOf('=')
      return at === -1 ? [[pair.trim(), '']] : [[pair.slice(0, at).trim(), pair.slice(at + 1).trim()]]
    }),
  )
