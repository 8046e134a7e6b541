import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { expect, test } from 'vitest'
import { grouped } from '../../src/reading/association/groups.ts'
import { piecesBegin } from '../../src/reading/association/pieces.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { makeExample } from '../../src/scan/training/association/example.ts'
import { filesUnder, importsOf } from '../house/source-files.ts'
import { pageOfText } from '../reading/page-of-text.ts'

const FOLDER = new URL('../../src/scan/child/association/', import.meta.url)

test('the model is the one that the recipe tells of, and under 8 MB', async () => {
  const recipe = JSON.parse(await readFile(new URL('recipe.json', FOLDER), 'utf8'))
  const bytes = await readFile(new URL(recipe.model, FOLDER))
  expect(createHash('sha256').update(bytes).digest('hex')).toBe(recipe.sha256)
  expect(bytes.length).toBeLessThan(8_000_000)
  expect((await associated(pageOfText(['Permit No. 12']))).links?.model).toBe(recipe.sha256)
})

test('the same words give the same links, whatever was read between', async () => {
  const page = pageOfText(['PERMIT 1978-014', '1000 gal conc ST, 3-50\' x 36" lines', 'DB conc. OK 8/9/78'])
  const first = await associated(page)
  await associated(pageOfText(['Bedrooms: 3', 'Well depth 85 ft']))
  expect(await associated(page)).toEqual(first)
  expect(first.links!.values.length).toBeGreaterThan(8)
})

test('nothing that runs imports what trains', () => {
  const outside = filesUnder('src').filter((file) => !file.startsWith('src/scan/training/'))
  const importing = outside.flatMap((file) =>
    importsOf(file)
      .filter(({ what }) => what.startsWith('src/scan/training/'))
      .map(({ what }) => `${file} imports ${what}`),
  )
  expect(importing).toEqual([])
})

test('a seed draws the same page for ever: what was trained on can be drawn again', () => {
  const hash = createHash('sha256')
  for (let seed = 1; seed <= 40; seed++) {
    const example = makeExample(seed)
    if (!example) continue
    hash.update(Buffer.from(example.encoded.spellings.buffer))
    hash.update(Buffer.from(example.encoded.looks.buffer))
    for (const target of Object.values(example.targets)) hash.update(Buffer.from(target.buffer))
  }
  expect(hash.digest('hex').slice(0, 16)).toBe('c2df5acbe4a3054e')
})

test.each([
  ['1000gal.conc.', ['1000', 'gal.', 'conc.']],
  [`2-50'x36"`, ['2-', `50'`, 'x', `36"`]],
  [`23'-6"`, [`23'-6"`]],
  ['Size:1,250', ['Size:', '1,250']],
  ['07-0412-0031', ['07-0412-0031']],
  ['[X]New', ['[X]', 'New']],
])('%s is cut where something of its own begins', (word, pieces) => {
  const begins = piecesBegin(word)
  expect(begins.map((from, at) => word.slice(from, begins[at + 1]))).toEqual(pieces)
})

test('what belongs together more likely than not is put together, and how clearly is told', () => {
  const likely = [
    [1, 0.9, 0.1, 0.2],
    [0.8, 1, 0.2, 0.1],
    [0.1, 0.2, 1, 0.95],
    [0.2, 0.1, 0.9, 1],
  ]
  const { group, clear } = grouped(4, (a, b) => likely[a]![b]!)
  expect(group[0]).toBe(group[1])
  expect(group[2]).toBe(group[3])
  expect(group[0]).not.toBe(group[2])
  expect(Math.min(...clear)).toBeGreaterThan(0.7)
  expect(grouped(0, () => 1)).toEqual({ group: [], clear: [] })
})
