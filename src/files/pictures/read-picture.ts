import path from 'node:path'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { err, ok, type Result } from '../../base/result.ts'
import { takingTurns } from '../../base/turns.ts'
import { type Ending, PROGRAM, runBounded } from '../../scan/bounded-child.ts'
import type { Taken } from './child/take.ts'
import { pictureFormat } from './picture-type.ts'

/**
 * A photo as it is kept: as it came, or without its notes where its place was not to be kept; what others get, upright,
 * no larger than a screen, with nothing in it but the image (`shown`, JPEG, with its pixels); a small one for lists and
 * one to print, both made of that. `takenAt`: by the camera's clock, ISO 8601, without an offset where it gave none.
 */
export type Picture = Taken

type Told = Omit<Taken, 'original' | 'shown' | 'small' | 'printed'>
/** What the process that reads pictures says, once; the bytes themselves come beside it, as long as it says. */
export type PictureMessage =
  | ({ readonly says: 'taken'; readonly lengths: readonly number[] } & Told)
  | { readonly says: 'shrunk'; readonly lengths: readonly number[] }
  | { readonly says: 'refused'; readonly why: string }

const SCRIPT = path.join(import.meta.dirname, 'child/main.ts')
const LIMIT_MS = 20_000
/** 50 million pixels of four bytes, laid out twice while they are turned, and the library. */
const MEMORY_BYTES = 768 * 1_048_576
/** What goes through the pipe at once: a picture of 20 MB holds nobody up. */
const PIECE = 65_536

const inTurn = takingTurns({ what: 'pictures to be read', atOnce: 2, each: 1, mostWaiting: 64 })

/**
 * Reads a photo as it came in, in a process of its own with limits: whatever the bytes do to an image library, they do it
 * there. In turns by `who` sends it. Refused with the reason where it is none that this takes; throws OutsideFailure
 * where too many wait, or no process can be had.
 */
export async function readPicture(
  bytes: Buffer,
  keepsPlace: boolean,
  who: string,
): Promise<Result<Picture, string>> {
  if (bytes.length === 0) return err('is empty')
  // Said at once, and without a process.
  if (pictureFormat(bytes) === null) return err('is not a supported image: send a JPEG, PNG or WebP')
  const { said, parts, ending } = await inTurn(who, () => inChild(bytes, ['take', String(keepsPlace)]))
  if (said?.says === 'refused') return err(said.why)
  if (said?.says === 'taken' && ending.how === 'finished') {
    const { says: _, lengths, ...told } = said
    const [original, shown, small, printed] = cut(parts, lengths) as [Buffer, Buffer, Buffer, Buffer]
    return ok({ ...told, original, shown, small, printed })
  }
  return err(tooMuch(ending))
}

/** A small one and one to print, of a picture that others get: for photos of which none were kept. */
export async function shrinkPicture(
  shown: Buffer,
): Promise<{ readonly small: Buffer; readonly printed: Buffer }> {
  const { said, parts, ending } = await inTurn('', () => inChild(shown, ['shrink']))
  if (said?.says !== 'shrunk' || ending.how !== 'finished')
    throw new OutsideFailure(`a kept picture can’t be made smaller: ${tooMuch(ending)}`)
  const [small, printed] = cut(parts, said.lengths) as [Buffer, Buffer]
  return { small, printed }
}

async function inChild(bytes: Buffer, args: readonly string[]) {
  let said: PictureMessage | undefined
  const parts: Buffer[] = []
  const ending = await runBounded({
    script: SCRIPT,
    args,
    mayRead: PROGRAM,
    memoryBytes: MEMORY_BYTES,
    firstMs: LIMIT_MS,
    signal: undefined,
    input: () => piecesOf(bytes),
    output: (part) => parts.push(part),
    onMessage: (message) => {
      said = message as PictureMessage
    },
  })
  return { said: said as PictureMessage | undefined, parts, ending }
}

function* piecesOf(bytes: Buffer): Generator<Buffer> {
  for (let at = 0; at < bytes.length; at += PIECE) yield bytes.subarray(at, at + PIECE)
}

function cut(parts: readonly Buffer[], lengths: readonly number[]): readonly Buffer[] {
  const whole = Buffer.concat(parts)
  let at = 0
  return lengths.map((length) => {
    at += length
    return whole.subarray(at - length, at)
  })
}

function tooMuch(ending: Ending): string {
  if (ending.how === 'timed-out' || ending.how === 'out-of-memory')
    return 'takes more time or memory to open than is allowed: send it as a plain JPEG'
  if (ending.how === 'finished') return 'is damaged: send it again'
  throw new OutsideFailure(`the reading of a picture ended: ${ending.detail}`, { retryAfterSeconds: 10 })
}
