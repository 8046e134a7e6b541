import sharp from 'sharp'
import { err, ok, type Result } from '../../base/result.ts'
import { exifTime } from './exif-time.ts'
import { withoutNotes } from './without-notes.ts'

/** What phones take. Told by what is inside, whatever the name or the request says. */
export const PICTURE_TYPES = { jpeg: 'image/jpeg', png: 'image/png', webp: 'image/webp' } as const
export type PictureType = (typeof PICTURE_TYPES)[keyof typeof PICTURE_TYPES]

/** 50 million pixels: more than a phone takes, and 200 MB when laid out. */
const MOST_PIXELS = 50_000_000
/** Enough to read a tape by on a wide screen. */
const SHOWN_PIXELS = 2048
const SMALL_PIXELS = 320
/** 250 to the inch where a report prints two side by side. */
const PRINTED_PIXELS = 800

export type Picture = {
  /** As it came, or without its notes where its place was not to be kept. */
  readonly original: Buffer
  readonly type: PictureType
  /** What others get: upright, no larger than a screen, with nothing in it but the image. JPEG. */
  readonly shown: Buffer
  /** Of `shown`, pixels. */
  readonly width: number
  readonly height: number
  /** How the camera was held (Exif 2.32, tag 0112): 1 upright, 3 upside down, 6 and 8 on its side. */
  readonly orientation: number
  /** By the camera's clock, ISO 8601, without an offset where it gave none. */
  readonly takenAt: string | null
}

/** Reads a photo as it came in; refused with the reason where it is none that this takes. */
export async function readPicture(bytes: Buffer, keepsPlace: boolean): Promise<Result<Picture, string>> {
  if (bytes.length === 0) return err('is empty')
  const options = { limitInputPixels: MOST_PIXELS, failOn: 'error' } as const
  const told = await sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch(() => null)
  const type = PICTURE_TYPES[told?.format as keyof typeof PICTURE_TYPES]
  if (!told || !type) return err('is not a supported image: send a JPEG, PNG or WebP')
  if (told.width * told.height > MOST_PIXELS)
    return err('has more than 50 million pixels: send a smaller one')
  if ((told.pages ?? 1) > 1) return err('is animated: send a still image')
  const shown = await sharp(bytes, options)
    .rotate()
    .resize({ width: SHOWN_PIXELS, height: SHOWN_PIXELS, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .jpeg({ quality: 82 })
    .toBuffer({ resolveWithObject: true })
    .catch(() => null)
  if (!shown) return err('is damaged: send it again')
  return ok({
    ...(keepsPlace ? { original: bytes, type } : await without(bytes, type)),
    shown: shown.data,
    width: shown.info.width,
    height: shown.info.height,
    orientation: told.orientation ?? 1,
    takenAt: told.exif ? exifTime(told.exif) : null,
  })
}

/** A picture that can be read and not taken apart is made anew, at a quality that shows no difference. */
async function without(bytes: Buffer, type: PictureType): Promise<Pick<Picture, 'original' | 'type'>> {
  const plain = withoutNotes(bytes)
  if (plain) return { original: Buffer.from(plain), type }
  return { original: await sharp(bytes).jpeg({ quality: 95 }).toBuffer(), type: 'image/jpeg' }
}

/** A small one for lists, from what others get. */
export const smallPicture = (shown: Buffer): Promise<Buffer> =>
  sharp(shown)
    .resize({ width: SMALL_PIXELS, height: SMALL_PIXELS, fit: 'inside' })
    .jpeg({ quality: 72 })
    .toBuffer()

/** One to print, from what others get: it holds the image alone, and weighs about 100 kB. */
export const printedPicture = (shown: Buffer): Promise<Buffer> =>
  sharp(shown)
    .resize({ width: PRINTED_PIXELS, height: PRINTED_PIXELS, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 75 })
    .toBuffer()
