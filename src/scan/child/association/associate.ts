import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { InferenceSession, Tensor } from 'onnxruntime-node'
import { decoded } from '../../../reading/association/decode.ts'
import { EDGES, encode, LOOKS, SPELLINGS } from '../../../reading/association/encode.ts'
import type { LinkedValue, PageLinks } from '../../../reading/association/links.ts'
import { type Piece, piecesOf, wordsTogether } from '../../../reading/association/pieces.ts'
import type { PageWords } from '../../../reading/page-words.ts'

const FILE = new URL('./association.onnx', import.meta.url)
/** Pages of more pieces are read in parts: time and memory go with the square of their number. */
const MOST_PIECES = 900
/** Twice the densest sheet of a register: what holds more is no permit, and would keep whoever waits. */
const MOST_LINKED = 3_000

type Model = { readonly session: InferenceSession; readonly hash: string }

/** One thread and no reordering: the same words give the same links on the same kind of machine. */
const AS_IT_IS = { intraOpNumThreads: 1, interOpNumThreads: 1, graphOptimizationLevel: 'all' } as const

let loading: Promise<Model> | undefined
async function load(): Promise<Model> {
  const bytes = await readFile(FILE)
  return {
    session: await InferenceSession.create(bytes, AS_IT_IS),
    hash: createHash('sha256').update(bytes).digest('hex'),
  }
}

/** The same page with what its words are and which belong together. */
export async function associated(page: PageWords): Promise<PageWords> {
  loading ??= load()
  return { ...page, links: await linksOf(page, await loading) }
}

/** The hash of the model that links now. */
export async function modelInForce(): Promise<string> {
  loading ??= load()
  return (await loading).hash
}

async function linksOf(page: PageWords, { session, hash }: Model): Promise<PageLinks> {
  const pieces = piecesOf(wordsTogether(page))
  if (pieces.length > MOST_LINKED) return { model: hash, values: [] }
  const values: LinkedValue[] = []
  let permits = 0
  for (const part of inParts(pieces)) {
    if (part.length === 0) continue
    const encoded = encode(part, page.heightPt / page.widthPt, page.readBy === 'picture')
    const { count } = encoded
    const answers = await session.run({
      spellings: new Tensor('int32', Int32Array.from(encoded.spellings), [count, SPELLINGS]),
      looks: new Tensor('float32', encoded.looks, [count, LOOKS]),
      edges: new Tensor('float32', encoded.edges, [count, EDGES]),
    })
    const own = decoded(part, {
      tags: answers.tags!.data as Float32Array,
      pairs: answers.pairs!.data as Float32Array,
    })
    const first = permits
    values.push(
      ...own.map((value) => ({
        ...value,
        permit: value.permit + first,
        part: value.part < 0 ? -1 : value.part + 1000 * first,
      })),
    )
    permits = Math.max(permits, ...values.map(({ permit }) => permit + 1))
  }
  return { model: hash, values }
}

/** Whole lines, as many as go into one part; the headings of the first line stand over each. */
function inParts(pieces: readonly Piece[]): Piece[][] {
  const parts: Piece[][] = [[]]
  let line: Piece[] = []
  const close = (): void => {
    if (parts.at(-1)!.length + line.length > MOST_PIECES) parts.push([])
    parts.at(-1)!.push(...line)
    line = []
  }
  for (const piece of pieces) {
    if (line.length > 0 && line[0]!.row !== piece.row) close()
    line.push(piece)
  }
  close()
  return parts
}
