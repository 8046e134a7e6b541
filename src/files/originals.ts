import { createHash, randomBytes } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { access, constants, mkdir, open, rename, rm, stat, statfs } from 'node:fs/promises'
import path from 'node:path'
import type { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { invariant } from '../base/invariant.ts'
import { OutsideFailure } from '../base/outside-failure.ts'
import { DamagedOriginal, isWhole, wholeFile } from './whole-file.ts'

export type Kept = {
  readonly hash: string
  readonly bytes: number
  /** Whether a damaged copy lay in its place, and does no more. */
  readonly healed?: boolean
}

/** Papers as they came in, by the SHA-256 of their bytes (64 hex digits): the same bytes are kept once, and never changed. */
export type Originals = {
  /**
   * Keeps what the stream holds, and returns when it lies on the disk, in the place of a copy that is damaged, too. A stream that breaks, or one that `check`
   * throws for at its end, leaves nothing. Throws OutsideFailure when the disk is full or gone.
   */
  readonly keep: (bytes: Readable, check?: (kept: Kept) => void) => Promise<Kept>
  /**
   * Undefined when nothing of that hash is kept. Its bytes are looked at before they leave: throws DamagedOriginal where
   * they are others than came in, and a large file breaks off with it before its end.
   */
  readonly read: (hash: string) => Promise<Readable | undefined>
  /** The path of the file, for a reader in another process, looked at alike; undefined when nothing of that hash is kept. */
  readonly pathOf: (hash: string) => Promise<string | undefined>
  /** Whether what is kept under that hash is what came in. */
  readonly verify: (hash: string) => Promise<'whole' | 'damaged' | 'missing'>
  /** Throws OutsideFailure when nothing could be kept now: the folder is gone, may not be written, or its disk is full. */
  readonly check: () => Promise<void>
  /** Of the disk they lie on, in bytes: what is free for this process, and all there is. */
  readonly space: () => Promise<{ readonly free: number; readonly total: number }>
}

/** What is hashed at once: others have their turn in between. */
const PIECE = 65_536

/** Room for a paper; the embedded database on the same disk stops at none, and needs some to stop cleanly. */
const LEAST_FREE = 64 * 1_048_576

/** Originals as files in a folder, in subfolders of the first two digits of the hash. */
export async function openOriginals(folder: string): Promise<Originals> {
  const drafts = path.join(folder, 'drafts')
  await mkdir(drafts, { recursive: true, mode: 0o700 })
  const placeOf = (hash: string): string => {
    invariant(/^[0-9a-f]{64}$/.test(hash), 'not the hash of an original')
    return path.join(folder, hash.slice(0, 2), hash)
  }
  const found = async (hash: string): Promise<string | undefined> => {
    const place = placeOf(hash)
    return (await exists(place)) ? place : undefined
  }
  const seen = rememberingWhole()
  const pathOf = async (hash: string): Promise<string | undefined> => {
    const place = await found(hash)
    if (place === undefined) return undefined
    if (!(await seen(place, hash))) throw new DamagedOriginal(hash)
    return place
  }
  const space = async () => {
    const { bavail, blocks, bsize } = await statfs(drafts)
    return { free: bavail * bsize, total: blocks * bsize }
  }
  return {
    space,
    keep: async (bytes, check) => {
      const draft = path.join(drafts, randomBytes(12).toString('hex'))
      try {
        const kept = await writeDraft(bytes, draft)
        check?.(kept)
        const place = placeOf(kept.hash)
        if (!(await exists(place))) await moveIntoPlace(draft, place)
        else if (await isWhole(place, kept.hash)) await rm(draft)
        else {
          await moveIntoPlace(draft, place)
          return { ...kept, healed: true }
        }
        return kept
      } catch (fault) {
        await rm(draft, { force: true })
        throw asOutside(fault)
      }
    },
    read: async (hash) => {
      const place = await found(hash)
      return place === undefined ? undefined : wholeFile(place, hash)
    },
    pathOf,
    verify: async (hash) => {
      const place = await found(hash)
      if (place === undefined) return 'missing'
      return (await isWhole(place, hash)) ? 'whole' : 'damaged'
    },
    check: async () => {
      await access(drafts, constants.W_OK).catch((cause) => {
        throw new OutsideFailure('The folder of originals cannot be written', {
          cause,
          retryAfterSeconds: 30,
        })
      })
      const { free } = await space()
      if (free < LEAST_FREE) throw new OutsideFailure('The disk is full', { retryAfterSeconds: 30 })
    },
  }
}

/** How long a file that was looked through and has not been touched since is taken for whole, milliseconds. */
const REMEMBER_MS = 600_000
const REMEMBER_MOST = 500

/** Whether a file is whole; one that is drawn page by page is not looked through for each page. */
function rememberingWhole(): (place: string, hash: string) => Promise<boolean> {
  const known = new Map<string, { readonly as: string; readonly until: number }>()
  return async (place, hash) => {
    const { ino, size, mtimeMs, ctimeMs } = await stat(place)
    const as = `${ino} ${size} ${mtimeMs} ${ctimeMs}`
    const before = known.get(place)
    if (before?.as === as && before.until > performance.now()) return true
    known.delete(place)
    if (!(await isWhole(place, hash))) return false
    if (known.size >= REMEMBER_MOST) known.clear()
    known.set(place, { as, until: performance.now() + REMEMBER_MS })
    return true
  }
}

async function writeDraft(bytes: Readable, draft: string): Promise<Kept> {
  const hash = createHash('sha256')
  let count = 0
  await pipeline(
    bytes,
    async function* (source) {
      for await (const part of source as AsyncIterable<Buffer | string>) {
        const chunk = typeof part === 'string' ? Buffer.from(part) : part
        for (let at = 0; at < chunk.length; at += PIECE) {
          const piece = chunk.subarray(at, at + PIECE)
          hash.update(piece)
          count += piece.length
          yield piece
        }
      }
    },
    createWriteStream(draft, { flags: 'wx', mode: 0o400, flush: true }),
  )
  return { hash: hash.digest('hex'), bytes: count }
}

/** Its bytes are on the disk already; the names must be too before anybody is told that it is kept. */
async function moveIntoPlace(draft: string, place: string): Promise<void> {
  const parent = path.dirname(place)
  const made = await mkdir(parent, { recursive: true, mode: 0o700 })
  await rename(draft, place)
  await syncFolder(parent)
  if (made) await syncFolder(path.dirname(parent))
}

async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

const exists = (file: string): Promise<boolean> =>
  stat(file).then(
    () => true,
    () => false,
  )

function asOutside(fault: unknown): unknown {
  const { code } = fault as NodeJS.ErrnoException
  const disk = ['ENOSPC', 'EDQUOT', 'EROFS', 'EIO', 'EMFILE', 'ENFILE', 'EACCES'].includes(code ?? '')
  return disk
    ? new OutsideFailure('The file cannot be stored right now', { cause: fault, retryAfterSeconds: 30 })
    : fault
}
