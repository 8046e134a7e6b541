import { opendir, stat } from 'node:fs/promises'
import path from 'node:path'

export type OriginalFile = { readonly hash: string; readonly path: string; readonly bytes: number }

/** Every original in a folder, in no order. What comes in meanwhile may or may not be among them; drafts are not. */
export async function* listOriginals(folder: string): AsyncGenerator<OriginalFile> {
  for await (const { name: first } of await entriesOf(folder)) {
    if (!/^[0-9a-f]{2}$/.test(first)) continue
    for await (const { name: hash } of await entriesOf(path.join(folder, first))) {
      if (!/^[0-9a-f]{64}$/.test(hash)) continue
      const file = path.join(folder, first, hash)
      yield { hash, path: file, bytes: (await stat(file)).size }
    }
  }
}

async function entriesOf(folder: string): Promise<AsyncIterable<{ readonly name: string }>> {
  try {
    return await opendir(folder)
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return (async function* () {})()
    throw fault
  }
}
