import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGunzip } from 'node:zlib'
import { extract } from 'tar-stream'
import { BackupRefusal } from './backup-refusal.ts'

export type ArchiveEntry = { readonly name: string; readonly stream: Readable }

/** The entries of a backup, one after the other; each is to be read to its end before the next. */
export async function* readArchive(file: string): AsyncGenerator<ArchiveEntry> {
  const entries = extract()
  const source = createReadStream(file)
  const flow = (await isGzipped(file)) ? pipeline(source, createGunzip(), entries) : pipeline(source, entries)
  // A fault in the flow also ends the entries; it is told below, once.
  const broken = flow.then(
    () => undefined,
    (fault: Error) => fault,
  )
  try {
    for await (const entry of entries) {
      yield {
        name: entry.header.name,
        stream: Readable.from(contentOf(file, entry as AsyncIterable<Buffer>), { objectMode: false }),
      }
    }
  } catch (fault) {
    throw unreadable(file, (await broken) ?? (fault as Error))
  } finally {
    source.destroy()
  }
  const fault = await broken
  if (fault) throw unreadable(file, fault)
}

/** A file that ends, or goes bad, within an entry is told by whoever reads the entry. */
async function* contentOf(file: string, entry: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
  try {
    yield* entry
  } catch (fault) {
    throw unreadable(file, fault as Error)
  }
}

const unreadable = (file: string, fault: Error): Error =>
  fault instanceof BackupRefusal
    ? fault
    : new BackupRefusal(`${file} cannot be read as a backup: ${fault.message}`)

async function isGzipped(file: string): Promise<boolean> {
  const handle = await open(file, 'r')
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(2), 0, 2, 0)
    return bytesRead === 2 && buffer.readUInt16BE(0) === 0x1f8b
  } finally {
    await handle.close()
  }
}
