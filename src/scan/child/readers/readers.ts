import type { Word } from '../../../reading/page-words.ts'
import type { Picture } from '../image/picture.ts'
import { loadAlphabet } from './alphabet.ts'
import { loadModels, type Models } from './models.ts'
import type { LineReader } from './read-strips.ts'
import { readWords, startWordReader } from './word-reader.ts'

/** The networks, loaded once in a process and only when a picture has to be read. */
export type Readers = { readonly models: Models; readonly general: LineReader }

let loading: Promise<Readers> | undefined
let second: ReturnType<typeof startWordReader> | undefined

export function readers(): Promise<Readers> {
  second ??= startWordReader()
  loading ??= loadModels().then((models) => ({
    models,
    general: { session: models.general, alphabet: loadAlphabet(), channels: 3 },
  }))
  return loading
}

/** A page full of specks keeps the second reader busy for minutes; then the first one has to do. */
const PATIENCE_MS = 25_000

/** What the second reader sees; null where it gave up. It reads in a thread of its own, beside the first. */
export async function secondReading(page: Picture): Promise<Word[] | null> {
  second ??= startWordReader()
  const worker = await second
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), PATIENCE_MS)
  })
  const words = await Promise.race([readWords(worker, page), late]).finally(() => clearTimeout(timer))
  if (words === null) {
    second = undefined
    await worker.terminate()
  }
  return words
}
