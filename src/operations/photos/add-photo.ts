import { Readable } from 'node:stream'
import { invariant } from '../../base/invariant.ts'
import { ok } from '../../base/result.ts'
import type { Picture } from '../../files/pictures/read-picture.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { findingsById, lockFindings } from '../../store/findings.ts'
import { insertPhoto, type Photo, type PhotoPlace, photosOf, samePhoto } from '../../store/photos.ts'
import type { OperationContext } from '../context.ts'
import { mayUse } from '../quotas.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'

/** What is said of a picture, its bytes lying in the originals. */
export type PictureKept = Pick<
  Photo,
  | 'contentHash'
  | 'shownHash'
  | 'smallHash'
  | 'printedHash'
  | 'mediaType'
  | 'bytes'
  | 'width'
  | 'height'
  | 'orientation'
  | 'takenAt'
>

export type PhotoTaken = {
  readonly picture: PictureKept
  readonly component: string | null
  /** By the phone's own clock; the camera's is taken where the phone says nothing. */
  readonly takenAt: string | null
  readonly place: PhotoPlace | null
}

/** As many as a day's work could need. */
const MOST = 200

/**
 * Keeps a picture's bytes, before any transaction begins: a slow disk holds no connection. Nothing is kept for findings
 * that the asker can't add to.
 */
export async function keepPicture(
  { database, files }: Pick<OperationContext, 'database' | 'files'>,
  actor: Person,
  findings: string,
  picture: Picture,
): Promise<Answer<PictureKept>> {
  const mine = await transact(database, actor, (tx) => findingsById(tx, actor.county, findings))
  if (!mine) return notFound()
  const { original, shown, small, printed, originalHash: contentHash, type: mediaType, ...told } = picture
  const keep = async (bytes: Buffer) => (await files.keep(Readable.from([bytes]))).hash
  const kept = await keep(original)
  invariant(kept === contentHash, 'the kept picture is the one that was read')
  return ok({
    contentHash,
    mediaType,
    bytes: original.length,
    shownHash: await keep(shown),
    smallHash: await keep(small),
    printedHash: await keep(printed),
    ...told,
  })
}

/**
 * Adds a photo to a firm's own findings, submitted or not: on a weak signal the numbers go first and the pictures
 * follow. It changes nothing that the findings say. The same picture again is the same photo.
 */
export const addPhoto = (
  context: OperationContext,
  actor: Person,
  findings: string,
  { picture, component, takenAt, place }: PhotoTaken,
): Promise<Answer<Photo>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account } = actor
    if (!(await lockFindings(tx, county, findings))) return notFound()
    const same = await samePhoto(tx, county, findings, picture.contentHash)
    if (same) return ok(same)
    if ((await photosOf(tx, county, findings)).length >= MOST)
      return conflict(`These findings already have ${MOST} photos, the most for one inspection.`)
    const may = await mayUse(tx, context, 'photos', picture.bytes)
    if (!may.ok) return may
    const photo: Photo = {
      ...picture,
      id: context.newId(),
      findings,
      component,
      takenAt: takenAt ?? picture.takenAt,
      place,
      addedAt: context.clock(),
    }
    await insertPhoto(tx, county, photo, account)
    return ok(photo)
  })
