import { createHash, randomBytes } from 'node:crypto'
import { createReadStream, createWriteStream } from 'node:fs'
import { access, constants, mkdir, open, rename, rm, stat, statfs } from 'node:fs/promises'
import path from 'node:path'
import type { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { invariant } from '../base/invariant.ts'
import { OutsideFailure } from '../base/outside-failure.ts'

export type Kept = { readonly hash: string; readonly bytes: number }

/** Papers as they came in, by the SHA-256 of their bytes (64 hex digits): the same bytes are kept once, and never changed. */
export type Originals = {
  /**
   * Keeps what the stream holds, and returns when it lies on the disk. A stream that breaks, or one that `check`
   * throws for at its end, leaves nothing. Throws OutsideFailure when the disk is full or gone.
   */
  readonly keep: (bytes: Readable, check?: (kept: Kept) => void) => Promise<Kept>
  /** Undefined when nothing of that hash is kept. */
  readonly read: (hash: string) => Promise<Readable | undefined>
  /** The path of the file, for a reader in another process; undefined when nothing of that hash is kept. */
  readonly pathOf: (hash: string) => Promise<string | undefined>
  /** Throws OutsideFailure when nothing could be kept now: the folder is gone, may not be written, or its disk is full. */
  readonly check: () => Promise<void>
  /** Of the disk they lie on, in bytes: what is free for this process, and all there is. */
  readonly space: () => Promise<{ readonly free: number; readonly total: number }>
}

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
  const pathOf = async (hash: string): Promise<string | undefined> => {
    const place = placeOf(hash)
    return (await exists(place)) ? place : undefined
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
        if (await exists(place)) await rm(draft)
        else await moveIntoPlace(draft, place)
        return kept
      } catch (fault) {
        await rm(draft, { force: true })
        throw asOutside(fault)
      }
    },
    read: async (hash) => {
      const place = await pathOf(hash)
      return place === undefined ? undefined : createReadStream(place)
    },
    pathOf,
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

async function writeDraft(bytes: Readable, draft: string): Promise<Kept> {
  const hash = createHash('sha256')
  let count = 0
  await pipeline(
    bytes,
    async function* (source) {
      for await (const chunk of source as AsyncIterable<Buffer>) {
        hash.update(chunk)
        count += chunk.length
        yield chunk
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
