import { InferenceSession } from 'onnxruntime-node'
import { OWN_ALPHABET } from '../../src/scan/child/readers/alphabet.ts'
import type { LineReader } from '../../src/scan/child/readers/read-strips.ts'

/** A recognizer as `export.py` writes it, to be held against the reader in use. */
export async function candidateReader(file: string): Promise<LineReader> {
  const session = await InferenceSession.create(file, { intraOpNumThreads: 1, interOpNumThreads: 1 })
  return {
    session,
    alphabet: OWN_ALPHABET,
    channels: 1,
  }
}
