import { loadAlphabet, OWN_ALPHABET } from './alphabet.ts'
import { loadModels, type Models } from './models.ts'
import type { LineReader } from './read-strips.ts'

/** The networks, loaded once in a process and only when a picture has to be read. */
export type Readers = {
  readonly models: Models
  /** Trained on what county files are made of; the first opinion. */
  readonly own: LineReader
  /** Trained on pictures of text of all kinds; the second opinion. */
  readonly general: LineReader
}

let loading: Promise<Readers> | undefined

export function readers(): Promise<Readers> {
  loading ??= loadModels().then((models) => ({
    models,
    own: { session: models.own, alphabet: OWN_ALPHABET, channels: 1 },
    general: { session: models.general, alphabet: loadAlphabet(), channels: 3 },
  }))
  return loading
}
