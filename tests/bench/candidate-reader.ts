import { InferenceSession } from 'onnxruntime-node'
import type { LineReader } from '../../src/scan/child/readers/read-strips.ts'

/** The signs that the training numbers from 1 on (`SIGNS` of `src/scan/training/recognizer/texts.py`). */
const SIGNS = [
  ' 0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz',
  `!"#$%&'()*+,-./:;<=>?@[\\]^_\`{|}~½¼¾°±`,
  '□☒▓',
].join('')

/** A recognizer as `export.py` writes it, to be held against the reader in use. */
export async function candidateReader(file: string): Promise<LineReader> {
  const session = await InferenceSession.create(file, { intraOpNumThreads: 1, interOpNumThreads: 1 })
  return {
    session,
    alphabet: { blank: 0, classes: [...SIGNS].map((sign, at) => ({ index: at + 1, sign })) },
    channels: 1,
  }
}
