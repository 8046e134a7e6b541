import { Readable } from 'node:stream'
import { ok } from '../../base/result.ts'
import type { Picture } from '../../files/pictures/read-picture.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { lockFindings } from '../../store/findings.ts'
import { insertPhoto, type Photo, type PhotoPlace, photosOf, samePhoto } from '../../store/photos.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'

export type PhotoTaken = {
  readonly picture: Picture
  readonly component: string | null
  /** By the phone's own clock; the camera's is taken where the phone says nothing. */
  readonly takenAt: string | null
  readonly place: PhotoPlace | null
}

/** As many as a day's work could need. */
const MOST = 200

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
    const kept = await context.files.keep(Readable.from([picture.original]))
    const same = await samePhoto(tx, county, findings, kept.hash)
    if (same) return ok(same)
    if ((await photosOf(tx, county, findings)).length >= MOST)
      return conflict(`These findings already have ${MOST} photos, the most for one inspection.`)
    const shown = await context.files.keep(Readable.from([picture.shown]))
    const photo: Photo = {
      id: context.newId(),
      findings,
      component,
      contentHash: kept.hash,
      shownHash: shown.hash,
      mediaType: picture.type,
      bytes: kept.bytes,
      width: picture.width,
      height: picture.height,
      orientation: picture.orientation,
      takenAt: takenAt ?? picture.takenAt,
      place,
      addedAt: context.clock(),
    }
    await insertPhoto(tx, county, photo, account)
    return ok(photo)
  })
