import type { MultipartFile } from '@fastify/multipart'
import type { FastifyRequest } from 'fastify'
import { z } from 'zod'
import { type Picture, readPicture } from '../../../files/pictures/read-picture.ts'
import { line } from '../../../reading/entry/fields.ts'
import { type Fault, problem } from '../../problem.ts'

/** More than a phone's picture takes at its best. */
const MOST_BYTES = 20 * 1_048_576

const isPicture = (value: unknown): boolean => typeof value === 'object' && value !== null && 'shown' in value
const figure = (least: number, most: number) => z.coerce.number().min(least).max(most).optional()

/** The form as it is described and, once `takePhoto` has put the picture in its place, as it is read. */
export const photoForm = z
  .object({
    photo: z.custom<Picture>(isPicture, 'is missing: send the picture as the part "photo"').meta({
      type: 'string',
      format: 'binary',
      description: 'JPEG, PNG or WebP, recognized by its content; up to 20 MB',
    }),
    component: line(60)
      .optional()
      .meta({
        description: 'The name of its component in the findings; leave out for a photo of the site',
        examples: ['tank'],
      }),
    takenAt: z.iso
      .datetime({ offset: true, error: 'write the moment with its offset, as 2026-10-12T09:14:03-05:00' })
      .optional()
      .meta({ description: 'By the phone’s clock; default: the camera’s time in the image' }),
    keepPlace: z
      .enum(['true', 'false'])
      .default('false')
      .meta({
        description:
          'The place is kept only with `true`: in the image’s metadata and in `lat` and `lon`. Otherwise all metadata is ' +
          'removed before the image is stored.',
      }),
    lat: figure(-90, 90),
    lon: figure(-180, 180),
    radiusFt: figure(0, 100_000),
  })
  .refine(({ lat, lon }) => (lat === undefined) === (lon === undefined), {
    path: ['lon'],
    message: 'a place needs both lat and lon',
  })
  .refine(({ lat, keepPlace }) => lat === undefined || keepPlace === 'true', {
    path: ['keepPlace'],
    message: 'a place is sent but not allowed: send keepPlace=true, or leave out lat and lon',
  })

/**
 * Reads a multipart request before it is validated, and its picture before any transaction begins: a slow phone holds
 * no connection, and neither does the process that opens it. Fingerprinted by the picture's bytes, so that a repeat is known by what was sent.
 */
export async function takePhoto(request: FastifyRequest): Promise<void> {
  if (!request.isMultipart())
    throw problem('unsupported-type', {
      detail: 'Send multipart/form-data with the picture as the part "photo".',
    })
  const form: Record<string, unknown> = {}
  const faults: Fault[] = []
  let sent: Buffer | undefined
  for await (const part of request.parts({ limits: { fileSize: MOST_BYTES } })) {
    if (part.fieldname in form || (part.fieldname === 'photo' && sent))
      faults.push(fault(part.fieldname, 'is sent twice'))
    if (part.type === 'field') {
      // A form in a browser sends what was left empty too.
      if (part.value !== '') form[part.fieldname] = part.value
    } else if (part.fieldname === 'photo') sent = await bytesOf(part)
    else {
      part.file.resume()
      faults.push(fault(part.fieldname, 'is not a file of this form: the picture is the part "photo"'))
    }
  }
  if (sent && sent.length > 0) {
    const picture = await readPicture(sent, form.keepPlace === 'true', request.caller.organization)
    // Its hash stands for the picture wherever the form is written down.
    if (picture.ok) form.photo = { ...picture.value, toJSON: () => picture.value.originalHash }
    else faults.push(fault('photo', picture.error))
  }
  request.body = form
  if (faults.length > 0) throw problem('invalid-input', { errors: faults })
}

async function bytesOf(part: MultipartFile): Promise<Buffer> {
  const bytes = await part.toBuffer().catch((cause: { readonly code?: string }) => {
    if (cause.code !== 'FST_REQ_FILE_TOO_LARGE') throw cause
    throw problem('too-large', { detail: 'The image is larger than 20 MB: send a smaller one.' })
  })
  return bytes
}

const fault = (field: string, message: string): Fault => ({ in: 'body', pointer: `/${field}`, message })
