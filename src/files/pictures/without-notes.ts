/**
 * A picture without what a camera or a program wrote beside it: place, time, owner, serial numbers, thumbnails. Its
 * image data stays as it is, byte for byte. Runs on the phone too, so that a place nobody meant to give never leaves it.
 *
 * JPEG: ITU-T T.81 (1992), annex B; PNG: W3C PNG third edition, 5.3 and 11.3; WebP: RFC 9649, 2.7. Null where the bytes
 * are none of these or are not well formed.
 */
export function withoutNotes(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const parts = jpegParts(bytes) ?? pngParts(bytes) ?? webpParts(bytes)
  if (!parts) return null
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

type Parts = readonly Uint8Array[]

const SOI = 0xd8
const EOI = 0xd9
const SOS = 0xda
const isRestart = (marker: number): boolean => marker >= 0xd0 && marker <= 0xd7
const text = (bytes: Uint8Array, from: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + length))

/** Kept: JFIF (APP0), color profile (APP2), Adobe's color transform (APP14). What follows the end marker goes too. */
function jpegParts(bytes: Uint8Array): Parts | null {
  if (bytes[0] !== 0xff || bytes[1] !== SOI) return null
  const parts = [bytes.subarray(0, 2)]
  let at = 2
  while (at + 3 < bytes.length) {
    if (bytes[at] !== 0xff) return null
    const marker = bytes[at + 1]!
    if (marker === 0xff) {
      at += 1
      continue
    }
    const end = at + 2 + ((bytes[at + 2]! << 8) | bytes[at + 3]!)
    if (end > bytes.length) return null
    if (marker === SOS) {
      const next = afterScan(bytes, end)
      if (next === null) return null
      parts.push(bytes.subarray(at, next))
      at = next
      if (bytes[at + 1] === EOI) return [...parts, bytes.subarray(at, at + 2)]
      continue
    }
    if (!isNote(marker, bytes, at + 4)) parts.push(bytes.subarray(at, end))
    at = end
  }
  return null
}

function isNote(marker: number, bytes: Uint8Array, at: number): boolean {
  if (marker === 0xfe) return true
  if (marker < 0xe0 || marker > 0xef) return false
  if (marker === 0xe0) return text(bytes, at, 4) !== 'JFIF'
  if (marker === 0xe2) return text(bytes, at, 11) !== 'ICC_PROFILE'
  return !(marker === 0xee && text(bytes, at, 5) === 'Adobe')
}

/** The next marker that is neither a stuffed zero nor a restart; null where the data ends without one. */
function afterScan(bytes: Uint8Array, from: number): number | null {
  for (let at = from; at + 1 < bytes.length; at++) {
    const next = bytes[at + 1]!
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && !isRestart(next)) return at
  }
  return null
}

const PNG_HEAD = '\x89PNG\r\n\x1a\n'
const PNG_NOTES: ReadonlySet<string> = new Set(['eXIf', 'tEXt', 'zTXt', 'iTXt', 'tIME'])

function pngParts(bytes: Uint8Array): Parts | null {
  if (text(bytes, 0, 8) !== PNG_HEAD) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const parts = [bytes.subarray(0, 8)]
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 12 + view.getUint32(at)
    if (end > bytes.length) return null
    const type = text(bytes, at + 4, 4)
    if (!PNG_NOTES.has(type)) parts.push(bytes.subarray(at, end))
    if (type === 'IEND') return parts
    at = end
  }
  return null
}

const WEBP_NOTES: ReadonlySet<string> = new Set(['EXIF', 'XMP '])
/** The bits of VP8X that promise EXIF and XMP. */
const WEBP_PROMISES = 0b1100

function webpParts(bytes: Uint8Array): Parts | null {
  if (text(bytes, 0, 4) !== 'RIFF' || text(bytes, 8, 4) !== 'WEBP') return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const whole = Math.min(bytes.length, 8 + view.getUint32(4, true))
  const chunks: Uint8Array[] = []
  for (let at = 12; at + 8 <= whole; ) {
    const size = view.getUint32(at + 4, true)
    const end = at + 8 + size + (size % 2)
    if (end > whole) return null
    const type = text(bytes, at, 4)
    if (type === 'VP8X') {
      const plain = bytes.slice(at, end)
      plain[8] = plain[8]! & ~WEBP_PROMISES
      chunks.push(plain)
    } else if (!WEBP_NOTES.has(type)) chunks.push(bytes.subarray(at, end))
    at = end
  }
  const head = bytes.slice(0, 12)
  new DataView(head.buffer).setUint32(4, 4 + chunks.reduce((sum, { length }) => sum + length, 0), true)
  return [head, ...chunks]
}
