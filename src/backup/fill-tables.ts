import { createHash, type Hash } from 'node:crypto'
import type { Readable } from 'node:stream'
import { finished } from 'node:stream/promises'
import type { ClientBase } from 'pg'
import { from as copyFrom } from 'pg-copy-streams'
import { BackupRefusal } from './backup-refusal.ts'
import type { Opening, TableProof, TableShape } from './manifest.ts'
import { copyIn } from './tables.ts'

export type TableFiller = {
  /** One part of one table; the parts of a table follow each other, and the tables are in the order announced. */
  readonly take: (name: string, part: Readable) => Promise<void>
  /** What was taken of each table. */
  readonly end: () => Promise<Readonly<Record<string, TableProof>>>
}

type Filling = {
  readonly table: TableShape
  readonly into: ReturnType<typeof copyFrom>
  readonly hash: Hash
  rows: number
}

/** Fills tables from COPY text, counting and hashing what comes. */
export function fillTables(client: ClientBase, { tables }: Opening): TableFiller {
  const shapes = new Map(tables.map((table) => [table.name, table]))
  const nothing: TableProof = { rows: 0, sha256: createHash('sha256').digest('hex') }
  const proofs: Record<string, TableProof> = Object.fromEntries(tables.map(({ name }) => [name, nothing]))
  let now: Filling | undefined

  const close = async () => {
    if (now === undefined) return
    const { table, into, hash, rows } = now
    now = undefined
    into.end()
    await finished(into)
    proofs[table.name] = { rows, sha256: hash.digest('hex') }
  }
  const openFor = async (name: string): Promise<Filling> => {
    if (now?.table.name === name) return now
    await close()
    const table = shapes.get(name)
    if (!table) throw new BackupRefusal(`The backup holds a table that it did not announce: ${name}`)
    now = { table, into: client.query(copyFrom(copyIn(table))), hash: createHash('sha256'), rows: 0 }
    // Told by whatever waits for it next.
    now.into.on('error', () => {})
    return now
  }

  return {
    take: async (name, part) => {
      const filling = await openFor(name)
      for await (const chunk of part as AsyncIterable<Buffer>) {
        filling.hash.update(chunk)
        for (const byte of chunk) if (byte === 10) filling.rows += 1
        if (filling.into.errored) throw filling.into.errored
        if (!filling.into.write(chunk)) await drained(filling.into)
      }
    },
    end: async () => {
      await close()
      return proofs
    },
  }
}

const drained = (stream: ReturnType<typeof copyFrom>): Promise<void> =>
  new Promise((resolve, reject) => {
    const done = () => {
      stream.off('error', failed)
      resolve()
    }
    const failed = (fault: Error) => {
      stream.off('drain', done)
      reject(fault)
    }
    stream.once('drain', done)
    stream.once('error', failed)
  })
