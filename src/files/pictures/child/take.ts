import { createHash } from 'node:crypto'
import sharp from 'sharp'
import { err, ok, type Result } from '../../../base/result.ts'
import { exifTime } from '../exif-time.ts'
import { PICTURE_TYPES, type PictureType, pictureFormat } from '../picture-type.ts'
import { withoutNotes } from '../without-notes.ts'

/** 50 million pixels: more than a phone takes, and 200 MB when laid out. */
const MOST_PIXELS = 50_000_000
/** Enough to read a tape by on a wide screen. */
const SHOWN_PIXELS = 2048
const SMALL_PIXELS = 320
/** 250 to the inch where a report prints two side by side. */
const PRINTED_PIXELS = 800

/** The library knows some twenty formats, some of them programs in disguise: it may open three. */
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({
  operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'],
})
// One picture, one process: it is gone before it could want what it has seen again.
sharp.cache(false)

export type Taken = {
  readonly original: Buffer
  readonly originalHash: string
  readonly type: PictureType
  readonly shown: Buffer
  readonly small: Buffer
  readonly printed: Buffer
  readonly width: number
  readonly height: number
  readonly orientation: number
  readonly takenAt: string | null
}

/** Makes of a picture what is kept of it; refused with the reason where it is none that this takes. */
export async function take(bytes: Buffer, keepsPlace: boolean): Promise<Result<Taken, string>> {
  if (bytes.length === 0) return err('is empty')
  const format = pictureFormat(bytes)
  if (format === null) return err('is not a supported image: send a JPEG, PNG or WebP')
  const told = await sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch(() => null)
  if (told?.format !== format) return err('is damaged: send it again')
  if (told.width * told.height > MOST_PIXELS)
    return err('has more than 50 million pixels: send a smaller one')
  if ((told.pages ?? 1) > 1) return err('is animated: send a still image')
  const shown = await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' })
    .rotate()
    .resize({ width: SHOWN_PIXELS, height: SHOWN_PIXELS, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .jpeg({ quality: 82 })
    .toBuffer({ resolveWithObject: true })
    .catch(() => null)
  if (!shown) return err('is damaged: send it again')
  const kept = keepsPlace ? { original: bytes, type: PICTURE_TYPES[format] } : await without(bytes, format)
  return ok({
    ...kept,
    originalHash: createHash('sha256').update(kept.original).digest('hex'),
    shown: shown.data,
    ...(await shrunk(shown.data)),
    width: shown.info.width,
    height: shown.info.height,
    orientation: told.orientation ?? 1,
    takenAt: told.exif ? exifTime(told.exif) : null,
  })
}

/** A small one for lists, and one to print, which weighs about 100 kB; from what others get. */
export const shrunk = async (shown: Buffer): Promise<{ small: Buffer; printed: Buffer }> => ({
  small: await inside(shown, SMALL_PIXELS, 72),
  printed: await inside(shown, PRINTED_PIXELS, 75),
})

const inside = (shown: Buffer, pixels: number, quality: number): Promise<Buffer> =>
  sharp(shown)
    .resize({ width: pixels, height: pixels, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality })
    .toBuffer()

/** A picture that can be read and not taken apart is made anew, at a quality that shows no difference. */
async function without(
  bytes: Buffer,
  format: keyof typeof PICTURE_TYPES,
): Promise<Pick<Taken, 'original' | 'type'>> {
  const plain = withoutNotes(bytes)
  if (plain) return { original: Buffer.from(plain), type: PICTURE_TYPES[format] }
  return { original: await sharp(bytes).jpeg({ quality: 95 }).toBuffer(), type: 'image/jpeg' }
}
