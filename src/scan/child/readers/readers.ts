import type { Worker } from 'tesseract.js'
import { type Alphabet, loadAlphabet } from './alphabet.ts'
import { loadModels, type Models } from './models.ts'
import { startWordReader } from './word-reader.ts'

/** Both readers, loaded once in a process and only when a picture has to be read. */
export type Readers = { readonly models: Models; readonly alphabet: Alphabet; readonly words: Worker }

let loading: Promise<Readers> | undefined

export function readers(): Promise<Readers> {
  loading ??= Promise.all([loadModels(), startWordReader()]).then(([models, words]) => ({
    models,
    alphabet: loadAlphabet(),
    words,
  }))
  return loading
}
