import { createHash } from 'node:crypto'
import type { ClientBase } from 'pg'
import { to as copyTo } from 'pg-copy-streams'
import type { TableProof, TableShape } from './manifest.ts'
import { copyOut } from './tables.ts'

const NEWLINE = 10

/** Reads a table as COPY text, hands on every piece, and returns how many rows there were and their SHA-256. */
export async function copyTable(
  client: ClientBase,
  table: TableShape,
  collated: ReadonlySet<string>,
  take: (piece: Buffer) => Promise<void> | void = () => {},
): Promise<TableProof> {
  const hash = createHash('sha256')
  let rows = 0
  for await (const piece of client.query(copyTo(copyOut(table, collated))) as AsyncIterable<Buffer>) {
    hash.update(piece)
    // In COPY text a row ends with a newline, and a newline within a value is written as two other characters.
    for (const byte of piece) if (byte === NEWLINE) rows += 1
    await take(piece)
  }
  return { rows, sha256: hash.digest('hex') }
}
