import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { OutsideFailure } from '../../base/outside-failure.ts'
import type { Originals } from '../../files/originals.ts'
import { shrinkPicture } from '../../files/pictures/read-picture.ts'
import { chosenPhotos, type PhotoInReport } from '../../letters/content/photos.ts'
import type { Pictures } from '../../letters/press/sheet.ts'
import type { Tx } from '../../store/database/database.ts'
import { photosOf } from '../../store/photos.ts'

export type ReportPhotos = {
  readonly shown: readonly PhotoInReport[]
  readonly all: number
  readonly pictures: Pictures
}

/**
 * The photos of an inspection as a report prints them. What is printed is kept among the originals by its own hash: made
 * again from the photo, another version of the picture library might write other bytes, and the letter be another.
 */
export async function reportPhotos(
  tx: Tx,
  files: Originals,
  county: string,
  findings: string | null,
): Promise<ReportPhotos> {
  const all = findings === null ? [] : await photosOf(tx, county, findings)
  const shown: PhotoInReport[] = []
  const pictures = new Map<string, Uint8Array>()
  for (const { component, takenAt, contentHash, shownHash, printedHash } of chosenPhotos(all)) {
    const hash = printedHash ?? (await keptToPrint(files, shownHash))
    pictures.set(hash, await bytesOf(files, hash))
    shown.push({ component, takenAt, takenHash: contentHash, printedHash: hash })
  }
  return { shown, all: all.length, pictures }
}

/** Of a photo of before pictures to print were kept with it. */
async function keptToPrint(files: Originals, shownHash: string): Promise<string> {
  const { printed } = await shrinkPicture(await bytesOf(files, shownHash))
  return (await files.keep(Readable.from([printed]))).hash
}

/** The same pictures again, for a letter that is printed once more. */
export async function picturesKept(files: Originals, hashes: readonly string[]): Promise<Pictures> {
  const pictures = new Map<string, Uint8Array>()
  for (const hash of hashes) pictures.set(hash, await bytesOf(files, hash))
  return pictures
}

async function bytesOf(files: Originals, hash: string): Promise<Buffer> {
  const file = await files.read(hash)
  if (!file)
    throw new OutsideFailure(`The photo ${hash} is missing from the originals: restore it from a backup`)
  return buffer(file)
}
