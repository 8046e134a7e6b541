import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { pipeline } from 'node:stream/promises'
import { type Pack, pack } from 'tar-stream'
import type { OriginalFile } from '../files/list-originals.ts'

export type ArchiveWriter = {
  readonly stream: Pack
  readonly add: (name: string, content: Buffer | string) => Promise<void>
  /** Adds many pieces as entries `name/1`, `name/2` …, each small enough to be held. */
  readonly inParts: (name: string) => {
    readonly take: (piece: Buffer) => Promise<void>
    readonly end: () => Promise<void>
  }
  /** Returns the SHA-256 of the bytes as they were read. */
  readonly addOriginal: (file: OriginalFile) => Promise<string>
}

const PART_BYTES = 4 * 1_048_576

/** Writes a tar file as a stream; whoever adds waits while the other end is slow. */
export function openArchive(): ArchiveWriter {
  const stream = pack()
  const add = (name: string, content: Buffer | string): Promise<void> =>
    new Promise((resolve, reject) => {
      stream.entry({ name, mode: 0o600 }, content, (fault) => (fault ? reject(fault) : resolve()))
    })
  return {
    stream,
    add,
    inParts: (name) => {
      let held: Buffer[] = []
      let bytes = 0
      let number = 0
      const end = async () => {
        if (bytes === 0) return
        number += 1
        const whole = Buffer.concat(held)
        held = []
        bytes = 0
        await add(`${name}/${number}`, whole)
      }
      const take = async (piece: Buffer) => {
        held.push(piece)
        bytes += piece.length
        if (bytes >= PART_BYTES) await end()
      }
      return { take, end }
    },
    addOriginal: async ({ hash: name, path, bytes }) => {
      const hash = createHash('sha256')
      const entry = stream.entry({ name: `originals/${name}`, size: bytes, mode: 0o600 })
      await pipeline(
        createReadStream(path),
        async function* (source) {
          for await (const chunk of source as AsyncIterable<Buffer>) {
            hash.update(chunk)
            yield chunk
          }
        },
        entry,
      )
      return hash.digest('hex')
    },
  }
}
