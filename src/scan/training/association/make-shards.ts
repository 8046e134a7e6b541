/**
 * Writes examples for training: `node make-shards.ts FOLDER FIRST STEP PAGES LAST`. Shard k holds the pages of the seeds from
 * k*PAGES on; this process writes FIRST, FIRST+STEP, ... up to LAST, and waits while many lie unread.
 */
import { readdirSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Example, makeExample } from './example.ts'

const [folder = '.', first = '0', step = '1', pages = '512', last = '1000000'] = process.argv.slice(2)
const MOST_UNREAD = 600
/** Seeds from here on are never trained on. */
export const FIRST_FRESH_SEED = 1_000_000_000

const bytes = (list: Uint8Array | Int16Array | Uint16Array | Float32Array): Buffer =>
  Buffer.from(list.buffer, list.byteOffset, list.byteLength)

function shard(number: number, size: number): Buffer {
  const examples: Example[] = []
  for (let seed = number * size; seed < (number + 1) * size; seed++) {
    const example = makeExample(seed + 1)
    if (example) examples.push(example)
  }
  const counts = Uint16Array.from(examples.map(({ encoded }) => encoded.count))
  const column = (pick: (example: Example) => Uint8Array | Int16Array | Uint16Array | Float32Array): Buffer =>
    Buffer.concat(examples.map((example) => bytes(pick(example))))
  return Buffer.concat([
    bytes(Uint32Array.of(examples.length) as unknown as Uint16Array),
    bytes(counts),
    column(({ encoded }) => encoded.spellings),
    column(({ encoded }) => encoded.looks),
    column(({ encoded }) => encoded.edges),
    ...(['field', 'begins', 'of', 'existing', 'unit', 'permit', 'component', 'label'] as const).map((name) =>
      column(({ targets }) => targets[name]),
    ),
  ])
}

if (import.meta.main) {
  for (let number = Number(first); number <= Number(last); number += Number(step)) {
    while (readdirSync(folder).length > MOST_UNREAD) await new Promise((resolve) => setTimeout(resolve, 100))
    const path = join(folder, `${number}.shard`)
    writeFileSync(`${path}.part`, shard(number, Number(pages)))
    renameSync(`${path}.part`, path)
  }
}
