import type { Tx } from './database/database.ts'

/** Where a photo was taken, by the phone's receiver and only where that was allowed. */
export type PhotoPlace = { readonly lat: number; readonly lon: number; readonly radiusFt: number | null }

/** A photo of an inspection. */
export type Photo = {
  readonly id: string
  readonly findings: string
  /** The name of its component in the findings; null for one of the whole site. */
  readonly component: string | null
  /** Of the picture as it was taken, and of the one that others get; both lie in the originals. */
  readonly contentHash: string
  readonly shownHash: string
  /** Of a small one and of one to print; null for a photo of before they were kept. */
  readonly smallHash: string | null
  readonly printedHash: string | null
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp'
  readonly bytes: number
  /** Of the one that others get, pixels. */
  readonly width: number
  readonly height: number
  readonly orientation: number
  /** ISO 8601, without an offset where only a camera's own clock says so. */
  readonly takenAt: string | null
  readonly place: PhotoPlace | null
  readonly addedAt: Date
}

const select = (tx: Tx, county: string) =>
  tx
    .selectFrom('photo')
    .select([
      'id',
      'findings',
      'component',
      'content_hash as contentHash',
      'shown_hash as shownHash',
      'small_hash as smallHash',
      'printed_hash as printedHash',
      'media_type as mediaType',
      'bytes',
      'width',
      'height',
      'orientation',
      'taken_at as takenAt',
      'lat',
      'lon',
      'radius_ft as radiusFt',
      'added_at as addedAt',
    ])
    .where('county', '=', county)

type Row = Awaited<ReturnType<ReturnType<typeof select>['executeTakeFirstOrThrow']>>
const asPhoto = ({ lat, lon, radiusFt, ...row }: Row): Photo => ({
  ...row,
  place: lat === null || lon === null ? null : { lat, lon, radiusFt },
})

export async function photoById(tx: Tx, county: string, id: string): Promise<Photo | undefined> {
  const row = await select(tx, county).where('id', '=', id).executeTakeFirst()
  return row && asPhoto(row)
}

/** In the order in which they came. */
export async function photosOf(tx: Tx, county: string, findings: string): Promise<readonly Photo[]> {
  const rows = await select(tx, county).where('findings', '=', findings).orderBy('id').execute()
  return rows.map(asPhoto)
}

/** Of several inspections at once, in the order in which they came. */
export async function photosOfInspections(
  tx: Tx,
  county: string,
  findings: readonly string[],
): Promise<readonly Photo[]> {
  if (findings.length === 0) return []
  const rows = await select(tx, county).where('findings', 'in', findings).orderBy('id').execute()
  return rows.map(asPhoto)
}

/** The same picture of the same inspection, if it came before. */
export async function samePhoto(
  tx: Tx,
  county: string,
  findings: string,
  contentHash: string,
): Promise<Photo | undefined> {
  const row = await select(tx, county)
    .where('findings', '=', findings)
    .where('content_hash', '=', contentHash)
    .executeTakeFirst()
  return row && asPhoto(row)
}

export const insertPhoto = async (
  tx: Tx,
  county: string,
  { place, addedAt, ...photo }: Photo,
  addedBy: string,
): Promise<void> => {
  await tx
    .insertInto('photo')
    .values({
      county,
      id: photo.id,
      findings: photo.findings,
      component: photo.component,
      content_hash: photo.contentHash,
      media_type: photo.mediaType,
      bytes: photo.bytes,
      shown_hash: photo.shownHash,
      small_hash: photo.smallHash,
      printed_hash: photo.printedHash,
      width: photo.width,
      height: photo.height,
      orientation: photo.orientation,
      taken_at: photo.takenAt,
      lat: place?.lat ?? null,
      lon: place?.lon ?? null,
      radius_ft: place?.radiusFt ?? null,
      added_by: addedBy,
      added_at: addedAt,
    })
    .execute()
}

/** False where there is none that the asker may take away. */
export async function deletePhoto(tx: Tx, county: string, id: string): Promise<boolean> {
  const { numDeletedRows } = await tx
    .deleteFrom('photo')
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
  return numDeletedRows > 0n
}
