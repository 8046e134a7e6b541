import { buffer } from 'node:stream/consumers'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { ok } from '../../base/result.ts'
import { shrinkPicture } from '../../files/pictures/read-picture.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { findingsById } from '../../store/findings.ts'
import { type Photo, photoById, photosOf } from '../../store/photos.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

/** `screen` and `small` hold the image and nothing else; `original` is the picture as it came. */
export const PHOTO_SIZES = ['screen', 'small', 'original'] as const
export type PhotoSize = (typeof PHOTO_SIZES)[number]

export type PhotoRead = { readonly type: string; readonly hash: string; readonly bytes: Buffer }

/** A picture for whoever may see its findings; the original for the firm that took it alone. */
export async function readPhoto(
  { database, files }: Pick<OperationContext, 'database' | 'files'>,
  actor: Person,
  id: string,
  size: PhotoSize,
): Promise<Answer<PhotoRead>> {
  const photo = await transact(database, actor, (tx) => photoById(tx, actor.county, id))
  if (!photo || (size === 'original' && actor.role !== 'firm')) return notFound()
  const bytesOf = async (hash: string): Promise<Buffer> => {
    const file = await files.read(hash)
    if (!file) throw new OutsideFailure(`the original ${hash} of photo ${id} is gone`)
    return buffer(file)
  }
  const { contentHash, shownHash, smallHash, mediaType } = photo
  const small = async (): Promise<PhotoRead> => ({
    type: 'image/jpeg',
    hash: smallHash ?? `${shownHash}-small`,
    bytes: smallHash ? await bytesOf(smallHash) : (await shrinkPicture(await bytesOf(shownHash))).small,
  })
  switch (size) {
    case 'original':
      return ok({ type: mediaType, hash: contentHash, bytes: await bytesOf(contentHash) })
    case 'screen':
      return ok({ type: 'image/jpeg', hash: shownHash, bytes: await bytesOf(shownHash) })
    case 'small':
      return ok(await small())
  }
}

/** The photos of findings, in the order in which they came. */
export const listPhotos = (
  { database }: Pick<OperationContext, 'database'>,
  actor: Person,
  findings: string,
): Promise<Answer<readonly Photo[]>> =>
  transact(database, actor, async (tx) => {
    if (!(await findingsById(tx, actor.county, findings))) return notFound()
    return ok(await photosOf(tx, actor.county, findings))
  })
