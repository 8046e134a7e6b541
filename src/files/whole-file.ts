import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { type FileHandle, open, stat } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { OutsideFailure } from '../base/outside-failure.ts'

/** The bytes of an original are others than came in: told by whoever reads it, and healed by sending the file again. */
export class DamagedOriginal extends OutsideFailure {
  readonly hash: string

  constructor(hash: string) {
    super(
      `The file ${hash} is damaged: its bytes are not those that were uploaded. Upload the same file again, or restore it from a copy.`,
    )
    this.hash = hash
  }
}

/** Files up to this are looked through before the first byte leaves; of larger ones the last bytes are kept back. */
const AT_ONCE = 24 * 1_048_576
const PIECE = 65_536

/** A file whose bytes are those of its name, or no file: throws DamagedOriginal, or the stream ends with it. */
export async function wholeFile(place: string, hash: string): Promise<Readable> {
  const { size } = await stat(place)
  if (size > AT_ONCE) return Readable.from(heldBack(place, hash), { objectMode: false })
  const file = await open(place, 'r')
  try {
    const bytes = Buffer.alloc(size)
    if (!(await fill(file, bytes, hash))) throw new DamagedOriginal(hash)
    return Readable.from(piecesOf(bytes), { objectMode: false })
  } finally {
    await file.close()
  }
}

async function fill(file: FileHandle, bytes: Buffer, hash: string): Promise<boolean> {
  const sum = createHash('sha256')
  for (let at = 0; at < bytes.length; ) {
    const { bytesRead } = await file.read(bytes, at, Math.min(PIECE, bytes.length - at), at)
    if (bytesRead === 0) return false
    sum.update(bytes.subarray(at, at + bytesRead))
    at += bytesRead
  }
  return sum.digest('hex') === hash
}

function* piecesOf(bytes: Buffer): Generator<Buffer> {
  for (let at = 0; at < bytes.length; at += PIECE) yield bytes.subarray(at, at + PIECE)
}

/** Whoever reads it to the end has read what came in: the end comes only after all of it was summed up. */
async function* heldBack(place: string, hash: string): AsyncGenerator<Buffer> {
  const sum = createHash('sha256')
  let last: Buffer | undefined
  for await (const piece of createReadStream(place, { highWaterMark: PIECE }) as AsyncIterable<Buffer>) {
    sum.update(piece)
    if (last) yield last
    last = piece
  }
  if (sum.digest('hex') !== hash) throw new DamagedOriginal(hash)
  if (last) yield last
}

/** Whether a file's bytes are those of its name. */
export async function isWhole(place: string, hash: string): Promise<boolean> {
  const sum = createHash('sha256')
  for await (const piece of createReadStream(place, { highWaterMark: PIECE }) as AsyncIterable<Buffer>)
    sum.update(piece)
  return sum.digest('hex') === hash
}
