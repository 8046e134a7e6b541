/** Tags of Exif 2.32 (CIPA DC-008-2019): the IFD of the picture's taking, when it was taken, and the clock's offset. */
const EXIF_IFD = 0x8769
const TAKEN = 0x9003
const OFFSET = 0x9011
const LONG = 4
const ASCII = 2

/**
 * When a camera says that it took a picture, ISO 8601 by its own clock, with an offset where it gives one; null where
 * the notes say nothing or can't be read. Reads these two values and nothing else, each once: notes are written by
 * anybody, and a general reader follows whatever counts they claim.
 */
export function exifTime(exif: Uint8Array): string | null {
  const head = String.fromCharCode(...exif.subarray(0, 4)) === 'Exif' ? 6 : 0
  const view = new DataView(exif.buffer, exif.byteOffset + head, Math.max(0, exif.byteLength - head))
  if (view.byteLength < 8) return null
  const order = view.getUint16(0)
  if (order !== 0x4949 && order !== 0x4d4d) return null
  const little = order === 0x4949
  const taking = entryWith(view, view.getUint32(4, little), EXIF_IFD, little)
  if (taking?.type !== LONG) return null
  const [taken, offset] = [TAKEN, OFFSET].map((tag) => text(view, entryWith(view, taking.value, tag, little)))
  const clock = /^(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)$/.exec(taken ?? '')
  if (!clock) return null
  const [, year, month, day, ...time] = clock
  const iso = `${year}-${month}-${day}T${time.join(':')}`
  if (Number.isNaN(Date.parse(`${iso}Z`)) || !new Date(`${iso}Z`).toISOString().startsWith(iso)) return null
  return iso + (/^[+-]\d\d:\d\d$/.test(offset ?? '') ? offset : '')
}

type Value = { readonly type: number; readonly count: number; readonly value: number; readonly at: number }

function entryWith(view: DataView, ifd: number, tag: number, little: boolean): Value | null {
  if (ifd + 2 > view.byteLength) return null
  const entries = view.getUint16(ifd, little)
  for (let at = ifd + 2; at + 12 <= view.byteLength && at < ifd + 2 + 12 * entries; at += 12) {
    if (view.getUint16(at, little) !== tag) continue
    const [type, count] = [view.getUint16(at + 2, little), view.getUint32(at + 4, little)]
    return { type, count, value: view.getUint32(at + 8, little), at: at + 8 }
  }
  return null
}

function text(view: DataView, found: Value | null): string | null {
  if (found?.type !== ASCII || found.count > 32) return null
  const from = found.count <= 4 ? found.at : found.value
  if (from + found.count > view.byteLength) return null
  const bytes = new Uint8Array(view.buffer, view.byteOffset + from, found.count)
  return String.fromCharCode(...bytes).replace(/\0.*$/s, '')
}
