import type { FastifyRequest } from 'fastify'
import { z } from 'zod'
import type { Kept } from '../../../files/originals.ts'
import { IMPORT_KINDS } from '../../../store/imports.ts'
import { type Fault, problem } from '../../problem.ts'
import { fileName } from '../file-name.ts'

/** A file that was sent, kept already. */
export type SentFile = Kept & { readonly fileName: string | null; readonly mediaType: string }

export const importForm = z.strictObject({
  kind: z.enum(IMPORT_KINDS, `write one of: ${IMPORT_KINDS.join(', ')}`).meta({ examples: ['permits'] }),
  format: z
    .enum(['csv', 'ndjson'])
    .optional()
    .meta({ description: 'Default: by the file’s name or type', examples: ['csv'] }),
  file: z
    .custom<SentFile>(
      (value) => typeof value === 'object' && value !== null,
      'is missing: send the file as the part "file"',
    )
    .meta({
      type: 'string',
      format: 'binary',
      description: 'CSV (UTF-8, with headings) or newline-delimited JSON',
    }),
})

/** Reads a multipart request before it is validated: its file goes to the originals as it comes in. */
export async function takeSentFile(request: FastifyRequest): Promise<void> {
  if (!request.isMultipart()) {
    throw problem('unsupported-type', {
      detail: 'Send multipart/form-data with the file as the part "file".',
    })
  }
  const form: Record<string, unknown> = {}
  const faults: Fault[] = []
  for await (const part of request.parts()) {
    if (part.fieldname in form) faults.push(fault(part.fieldname, 'is sent twice'))
    if (part.type === 'field') form[part.fieldname] = part.value
    else if (part.fieldname === 'file') {
      const kept = await request.context.files.keep(part.file, () => {
        if (part.file.truncated)
          throw problem('too-large', { detail: 'The file is larger than this service accepts.' })
      })
      form.file = { ...kept, fileName: fileName(part.filename), mediaType: part.mimetype }
    } else {
      part.file.resume()
      faults.push(fault(part.fieldname, 'is not a file of this form: send it as the part "file"'))
    }
  }
  if (faults.length > 0) throw problem('invalid-input', { errors: faults })
  request.body = form
}

/** As it was said, else as the file is named or typed; a file of neither is CSV. */
export const formatOf = ({ format, file }: z.output<typeof importForm>): 'csv' | 'ndjson' =>
  format ??
  (/\.(ndjson|jsonl)$/i.test(file.fileName ?? '') || /ndjson|jsonl/.test(file.mediaType) ? 'ndjson' : 'csv')

const fault = (field: string, message: string): Fault => ({ in: 'body', pointer: `/${field}`, message })
