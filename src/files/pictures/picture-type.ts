/** What phones take. Told by what is inside, whatever the name or the request says. */
export const PICTURE_TYPES = { jpeg: 'image/jpeg', png: 'image/png', webp: 'image/webp' } as const
export type PictureFormat = keyof typeof PICTURE_TYPES
export type PictureType = (typeof PICTURE_TYPES)[PictureFormat]

const starts = (bytes: Uint8Array, at: number, mark: readonly number[]): boolean =>
  mark.every((byte, index) => bytes[at + index] === byte)
const letters = (text: string): readonly number[] => [...text].map((letter) => letter.charCodeAt(0))

/**
 * Which of the three it begins as, before anything is made of it: an image library asked what a file is tries every
 * format that it knows. JPEG: ITU-T T.81, B.1.1.3; PNG: W3C PNG third edition, 5.2; WebP: RFC 9649, 2.4.
 */
export function pictureFormat(bytes: Uint8Array): PictureFormat | null {
  if (starts(bytes, 0, [0xff, 0xd8, 0xff])) return 'jpeg'
  if (starts(bytes, 0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'png'
  if (starts(bytes, 0, letters('RIFF')) && starts(bytes, 8, letters('WEBP'))) return 'webp'
  return null
}
