import type { Piece } from './pieces.ts'

/** How many hashed spellings stand for a piece, and how many numbers tell of its looks. */
export const SPELLINGS = 14
export const LOOKS = 12
/** Edges in heights of the page's text, so that distances mean the same on every page. */
export const EDGES = 5
const BUCKETS = 8191

export type Encoded = {
  readonly count: number
  readonly spellings: Uint16Array
  readonly looks: Float32Array
  readonly edges: Float32Array
}

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let value = 0x811c9dc5
  for (let at = 0; at < text.length; at++) value = Math.imul(value ^ text.charCodeAt(at), 0x01000193)
  value ^= value >>> 15
  return 1 + ((value >>> 0) % BUCKETS)
}

const cache = new Map<string, readonly number[]>()

function spellingsOf(text: string): readonly number[] {
  const known = cache.get(text)
  if (known) return known
  const small = text.toLowerCase().replace(/([_.·…-])\1{2,}/g, '$1$1')
  const shaped = small.replace(/\d/g, '0')
  const letters = shaped.replace(/[^a-z0-9#%'"]/g, '')
  const list = [`w${small}`, `s${shaped}`, `l${letters}`, `p${letters.slice(0, 4)}`, `e${letters.slice(-3)}`]
  const framed = `^${letters}$`
  for (let at = 0; at + 3 <= framed.length && list.length < SPELLINGS; at++)
    list.push(framed.slice(at, at + 3))
  const ids = list.map(hash)
  if (cache.size > 20_000) cache.clear()
  cache.set(text, ids)
  return ids
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 1

const BOX_FULL = /^[[(]\s?[xX✓✔*]\s?[\])]$|^[☒☑✔✓■]$/
const BOX_EMPTY = /^[[(]\s?[\])]?$|^[☐□]$/

/** A page's pieces as the model takes them. `aspect`: height over width of the page. */
export function encode(pieces: readonly Piece[], aspect: number, isPicture: boolean): Encoded {
  const count = pieces.length
  const spellings = new Uint16Array(count * SPELLINGS)
  const looks = new Float32Array(count * LOOKS)
  const edges = new Float32Array(count * EDGES)
  const height = Math.max(0.004, median(pieces.map(({ box }) => box.h * aspect)))
  pieces.forEach(({ text, box, struck, glued, row }, index) => {
    spellingsOf(text).forEach((id, nth) => {
      spellings[index * SPELLINGS + nth] = id
    })
    const before = pieces[index - 1]
    const after = pieces[index + 1]
    const figures = text.replace(/[^\d.]/g, '')
    const amount = Number.parseFloat(figures)
    const right = box.x + box.w
    const gapBefore = before?.row === row ? (box.x - before.box.x - before.box.w) / height : 20
    const gapAfter = after?.row === row ? (after.box.x - right) / height : 20
    looks.set(
      [
        box.x,
        right,
        box.y,
        Math.log(Math.max(0.2, (box.h * aspect) / height)),
        Math.tanh(gapBefore / 4),
        Math.tanh(gapAfter / 4),
        struck ? 1 : 0,
        BOX_FULL.test(text) ? 1 : BOX_EMPTY.test(text) ? -1 : 0,
        isPicture ? 1 : 0,
        text.replace(/\D/g, '').length / text.length,
        Number.isFinite(amount) && amount > 0 ? Math.log10(amount) / 2 : -0.5,
        glued ? 1 : 0,
      ],
      index * LOOKS,
    )
    edges.set(
      [box.x / height, right / height, ((box.y + box.h / 2) * aspect) / height, row, index],
      index * EDGES,
    )
  })
  return { count, spellings, looks, edges }
}
