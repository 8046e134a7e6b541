import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { invariant } from '../../../base/invariant.ts'
import type { Picture } from '../../../files/pictures/read-picture.ts'
import { addPhoto, keepPicture, type PictureKept } from '../../../operations/photos/add-photo.ts'
import { listPhotos, PHOTO_SIZES, readPhoto } from '../../../operations/photos/read-photo.ts'
import { removePhoto } from '../../../operations/photos/remove-photo.ts'
import { answered } from '../answer.ts'
import { idPath } from '../shapes/paths.ts'
import { photo, presentPhoto } from './shapes.ts'
import { photoForm, takePhoto } from './take-photo.ts'

const tags = ['Photos']
/** What is kept of a picture that is being taken in, until its request is answered. */
const kept = new WeakMap<Picture, PictureKept>()
const pictureBytes = z.string().meta({ format: 'binary' })

export const photos: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/findings/:id/photos',
    {
      config: { access: ['firm'], idempotent: true },
      preValidation: takePhoto,
      // Before the handler, which on this route begins inside a transaction.
      preHandler: async (request) => {
        const { context, actor, params, body } = request
        kept.set(body.photo, answered(await keepPicture(context, actor, params.id, body.photo)))
      },
      schema: {
        summary: 'Add a photo to findings',
        description:
          'To a draft or to submitted findings: on a weak signal, photos may follow later. The same image again is the ' +
          'same photo.',
        tags,
        operationId: 'addPhoto',
        consumes: ['multipart/form-data'],
        params: idPath,
        body: photoForm,
        response: { 201: photo },
      },
    },
    async ({ context, actor, params, body }, reply) => {
      const { photo: sent, component = null, takenAt = null, lat, lon, radiusFt = null } = body
      const place = lat === undefined || lon === undefined ? null : { lat, lon, radiusFt }
      const picture = kept.get(sent)
      invariant(picture, 'a picture is kept before it is added')
      const added = answered(
        await addPhoto(context, actor, params.id, { picture, component, takenAt, place }),
      )
      reply.code(201).header('location', `/v1/counties/${actor.county}/photos/${added.id}`)
      return presentPhoto(added)
    },
  )

  app.get(
    '/counties/:county/findings/:id/photos',
    {
      config: { access: ['firm', 'reviewer'] },
      schema: {
        summary: 'The photos of findings, in the order they came',
        tags,
        operationId: 'listPhotos',
        params: idPath,
        response: { 200: z.object({ items: z.array(photo) }) },
      },
    },
    async ({ context, actor, params }) => ({
      items: answered(await listPhotos(context, actor, params.id)).map(presentPhoto),
    }),
  )

  app.get(
    '/counties/:county/photos/:id',
    {
      config: { access: ['firm', 'reviewer'] },
      schema: {
        summary: 'A photo',
        description:
          'Upright, screen size, without metadata. `original` is the stored image, only for the firm that took it.',
        tags,
        operationId: 'readPhoto',
        params: idPath,
        querystring: z.object({ size: z.enum(PHOTO_SIZES).default('screen') }),
        response: { 200: { description: 'The picture', content: { 'image/*': { schema: pictureBytes } } } },
      },
    },
    async ({ context, actor, params, query }, reply) => {
      const { type, hash, bytes } = answered(await readPhoto(context, actor, params.id, query.size))
      return (
        reply
          .type(type)
          .header('etag', `"${hash}"`)
          .header('cache-control', 'private, max-age=86400')
          // Bytes as they are; the schema only describes them.
          .send(bytes as never)
      )
    },
  )

  app.delete(
    '/counties/:county/photos/:id',
    {
      config: { access: ['firm'] },
      schema: {
        summary: 'Remove a photo from a draft',
        description: 'Findings that were submitted keep theirs (409).',
        tags,
        operationId: 'removePhoto',
        params: idPath,
        response: { 204: z.null() },
      },
    },
    async ({ context, actor, params }, reply) => {
      answered(await removePhoto(context, actor, params.id))
      return reply.code(204).send(null)
    },
  )
}
