import { Readable } from 'node:stream'
import type { MultipartFile } from '@fastify/multipart'
import type { FastifyRequest } from 'fastify'
import { z } from 'zod'
import type { Kept } from '../../../files/originals.ts'
import { line } from '../../../reading/entry/fields.ts'
import { type Fault, problem } from '../../problem.ts'
import { fileName } from '../file-name.ts'

/** A file that was sent, kept already. */
export type Upload = Kept & { readonly mediaType: string; readonly fileName: string | null }

/** The form as it is described and, once `takeUpload` has put the file in its place, as it is read. */
export const uploadForm = z.strictObject({
  file: z
    .custom<Upload>(
      (value) => typeof value === 'object' && value !== null,
      'is missing: send the PDF as the part "file"',
    )
    .meta({
      type: 'string',
      format: 'binary',
      description: 'A PDF, typed or scanned; it may contain many permits',
    }),
  parcel: line(80)
    .optional()
    .meta({ description: 'The parcel it belongs to, where it is one', examples: ['07-0412-0031'] }),
})

/** A PDF says what it is within its first 1,024 bytes (ISO 32000-2, 7.5.2, as readers take it). */
const HEADER_WITHIN = 1024

/**
 * Reads a multipart request before it is validated: its file goes to the originals as it comes in, and the body
 * becomes the form, with the file's hash in place of its bytes, so that a repeat is known by what was sent.
 */
export async function takeUpload(request: FastifyRequest): Promise<void> {
  if (!request.isMultipart()) {
    throw problem('unsupported-type', { detail: 'Send multipart/form-data with the PDF as the part "file".' })
  }
  const form: Record<string, unknown> = {}
  const faults: Fault[] = []
  for await (const part of request.parts()) {
    if (part.fieldname in form) faults.push(fault(part.fieldname, 'is sent twice'))
    if (part.type === 'field') form[part.fieldname] = part.value
    else if (part.fieldname === 'file') form.file = await keep(request, part)
    else {
      part.file.resume()
      faults.push(fault(part.fieldname, 'is not a file of this form: the PDF is the part "file"'))
    }
  }
  if (faults.length > 0) throw problem('invalid-input', { errors: faults })
  request.body = form
}

async function keep({ context }: FastifyRequest, part: MultipartFile): Promise<Upload> {
  const kept = await context.files.keep(Readable.from(onlyPdf(part.file)), () => {
    if (part.file.truncated)
      throw problem('too-large', { detail: 'The file is larger than this service accepts.' })
  })
  return { ...kept, mediaType: 'application/pdf', fileName: fileName(part.filename) }
}

/** Passes a PDF through, and refuses anything else before its first bytes are kept. */
async function* onlyPdf(source: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
  let head: Buffer | undefined = Buffer.alloc(0)
  for await (const chunk of source) {
    if (head === undefined) {
      yield chunk
      continue
    }
    head = Buffer.concat([head, chunk])
    if (head.length < HEADER_WITHIN) continue
    yield checked(head)
    head = undefined
  }
  if (head !== undefined) yield checked(head)
}

function checked(head: Buffer): Buffer {
  if (head.subarray(0, HEADER_WITHIN).includes('%PDF-')) return head
  throw problem('invalid-input', {
    errors: [fault('file', 'is not a PDF: save a photo or a word-processor file as one first')],
  })
}

const fault = (field: string, message: string): Fault => ({ in: 'body', pointer: `/${field}`, message })
