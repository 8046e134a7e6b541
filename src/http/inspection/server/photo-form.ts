import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import type { Picture } from '../../../files/pictures/read-picture.ts'
import { prepareInspection } from '../../../operations/findings/prepare-inspection.ts'
import { addPhoto, keepPicture } from '../../../operations/photos/add-photo.ts'
import { answered } from '../../api/answer.ts'
import { takePhoto } from '../../api/photos/take-photo.ts'
import { Problem } from '../../problem.ts'
import { inspectionPath } from '../addresses.ts'
import { sendInspection } from './page.ts'

const form = z.object({
  photo: z.custom<Picture>().optional(),
  step: z.string().max(120).default('start'),
  component: z.string().max(60).optional(),
})

/** Takes a photo of the plain form. An inspection that was not saved yet has nothing to hold it, and says so. */
export async function takePhotoForm(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
): Promise<FastifyReply> {
  const { context, actor } = request
  const fault = await takePhoto(request).catch((thrown: unknown) => {
    if (thrown instanceof Problem && thrown.kind !== 'unsupported-type') return thrown
    throw thrown
  })
  const { photo, step, component = null } = form.parse(request.body ?? {})
  const prepared = answered(await prepareInspection(context, actor, asked))
  const again = (notice: string) => sendInspection(request, reply, prepared, { step, notice, status: 422 })
  if (fault)
    return again(
      `The photo was not kept: it ${fault.errors?.[0]?.message ?? fault.detail ?? 'can’t be read'}.`,
    )
  if (!photo) return again('Choose a photo first.')
  const findings = prepared.draft ?? prepared.submitted
  if (!findings) return again('Save the first step, then add photos.')
  const picture = answered(await keepPicture(context, actor, findings.id, photo))
  answered(await addPhoto(context, actor, findings.id, { picture, component, takenAt: null, place: null }))
  return reply.redirect(`${inspectionPath(actor.county, prepared.parcel.number, step)}#photos-title`, 303)
}
