import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { Tensor } from 'onnxruntime-node'
import { expect, test } from 'vitest'
import type { Word } from '../../src/reading/page-words.ts'
import { OWN_ALPHABET } from '../../src/scan/child/readers/alphabet.ts'
import { readStrips } from '../../src/scan/child/readers/read-strips.ts'
import { readers } from '../../src/scan/child/readers/readers.ts'
import { sideBySide } from '../../src/scan/child/readers/side-by-side.ts'
import { HEIGHT, type Strip } from '../../src/scan/child/readers/strip.ts'

const FOLDER = new URL('../../src/scan/child/readers/', import.meta.url)
const TRAINING = new URL('../../src/scan/training/recognizer/', import.meta.url)

test('the model is the one that the recipe tells of, and under 14 MB', async () => {
  const recipe = JSON.parse(await readFile(new URL('recognizer.json', FOLDER), 'utf8'))
  const bytes = await readFile(new URL(recipe.model, FOLDER))
  expect(createHash('sha256').update(bytes).digest('hex')).toBe(recipe.sha256)
  expect(bytes.length).toBeLessThan(14_000_000)
  expect(
    recipe.parts.reduce((sum: number, { seconds }: { seconds: number }) => sum + seconds, 0),
  ).toBeLessThan(2_600)
})

test('its classes are the signs that the training numbers, in their order', async () => {
  const source = await readFile(new URL('texts.py', TRAINING), 'utf8')
  expect(source).toContain(
    'SIGNS = " " + string.digits + string.ascii_uppercase + string.ascii_lowercase + string.punctuation + "½¼¾°±" + "□☒▓"',
  )
  // As Python's `string.punctuation` has them: the printable signs of ASCII that are no letter, no figure and no space.
  const ascii = Array.from({ length: 94 }, (_, at) => String.fromCharCode(33 + at))
  const punctuation = ascii.filter((sign) => !/[A-Za-z0-9]/.test(sign)).join('')
  const signs = OWN_ALPHABET.classes.map(({ sign }) => sign).join('')
  expect(signs.slice(63, 95)).toBe(punctuation)
  expect(signs.slice(95)).toBe('½¼¾°±□☒▓')
  const { own } = await readers()
  const [line] = await readStrips(own, [white(160)])
  expect(line!.signs).toEqual([])
  const out = await own.session.run({ line: picture(160) })
  expect(out[own.session.outputNames[0]!]!.dims).toEqual([1, 40, OWN_ALPHABET.classes.length + 1])
})

function white(width: number): Strip {
  const gray = new Uint8Array(HEIGHT * width).fill(255)
  return { box: { x: 0, y: 0, w: width, h: HEIGHT, score: 1 }, gray, width, left: 0, wide: width }
}
const picture = (width: number): Tensor =>
  new Tensor('float32', new Float32Array(HEIGHT * width).fill(1), [1, 1, HEIGHT, width])

const box = (x: number, w = 0.1) => ({ x, y: 0.1, w, h: 0.02 })
const word = (text: string, x: number): Word => ({ text, box: box(x), confidence: 0.9 })

test('what the first reader calls struck out is told by the other one, who is then no second opinion on it', () => {
  const { words, secondWords } = sideBySide(
    [word('▓▓▓▓', 0.1), word('1250', 0.3)],
    [word('1000', 0.1), word('1250', 0.3)],
  )
  expect(words.map(({ text }) => text)).toEqual(['1250', '1000'])
  expect(secondWords.map(({ text }) => text)).toEqual(['1250'])
})

test('a drawn box that stands alone is a box to tick; a sign within a word is not', () => {
  const { words } = sideBySide([word('☒', 0.1), word('□', 0.3), word('Materi☒l', 0.5)], [])
  expect(words.map(({ text }) => text)).toEqual(['[X]', '[ ]', 'Materi☒l'])
})
