/**
 * The generator's own fresh seeds, which flatter: `node tests/bench/drawn-pages.bench.ts [pages]`. Each page is one that
 * no training drew; how many of its values are found exactly (every word of it, its field, its part and no more), and how
 * far scores are to be believed.
 */

import { FIELDS, TOLD_OF } from '../../src/reading/association/fields.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { makeExample } from '../../src/scan/training/association/example.ts'
import { FIRST_FRESH_SEED } from '../../src/scan/training/association/make-shards.ts'
import { interval } from '../forms/unseen/held.ts'

const pages = Number(process.argv[2] ?? 200)
type Found = { readonly score: number; readonly right: boolean }
const found: Found[] = []
let told = 0
let hit = 0
for (let seed = FIRST_FRESH_SEED; seed < FIRST_FRESH_SEED + pages; seed++) {
  const example = makeExample(seed)
  if (!example) continue
  const { targets, pieces, page } = example
  const truth = new Map<string, { field: string; of: string }>()
  const open = new Map<number, number[]>()
  const close = (own: readonly number[]): void => {
    const first = own[0]!
    const text = own.map((at) => pieces[at]!.text).join('')
    truth.set(`${text}@${pieces[first]!.box.x.toFixed(3)},${pieces[first]!.box.y.toFixed(3)}`, {
      field: FIELDS[targets.field[first]!]!,
      of: TOLD_OF[targets.of[first]!]!,
    })
  }
  const values: number[][] = []
  targets.field.forEach((field, at) => {
    if (field === 0) return
    if (targets.begins[at]) {
      const own = [at]
      values.push(own)
      open.set(field, own)
    } else open.get(field)?.push(at)
  })
  values.forEach(close)
  told += values.length
  const linked = await associated(page satisfies PageWords)
  for (const value of linked.links!.values) {
    const key = `${value.text.replace(/\s/g, '')}@${value.box.x.toFixed(3)}`
    const match = [...truth].find(
      ([at, { field, of }]) => at.startsWith(key) && field === value.field && of === value.of,
    )
    found.push({ score: value.score, right: match !== undefined })
    if (match) {
      hit += 1
      truth.delete(match[0])
    }
  }
}
const share = (part: number, whole: number): string => {
  const [low, high] = interval(part, whole)
  return `${((100 * part) / whole).toFixed(2)} % (${(100 * low).toFixed(2)} to ${(100 * high).toFixed(2)})`
}
process.stdout.write(
  `${pages} pages, ${told} values: found exactly ${share(hit, told)}; of those said right ${share(hit, found.length)}\n`,
)
for (const [low, high] of [
  [0, 0.5],
  [0.5, 0.9],
  [0.9, 0.98],
  [0.98, 0.999],
  [0.999, 1.01],
] as const) {
  const own = found.filter(({ score }) => score >= low && score < high)
  if (own.length > 0)
    process.stdout.write(
      `score ${low} to ${Math.min(1, high)}: ${own.length}, right ${share(own.filter(({ right }) => right).length, own.length)}\n`,
    )
}
process.exit(0)
