import { expect, test } from 'vitest'
import { readProgram } from './program.ts'
import { proseIn, readsBack } from './read-back.ts'

const program = readProgram()
/** What draws pages to train on writes what papers say, and is no part of the service. */
const sources = program.filter(({ file }) => /^src\/(?!scan\/training\/)/.test(file))
const phrases = new Set(sources.flatMap(proseIn))

/** A fault of a field goes on from the field's name or stands after a colon: grammar, no meaning. */
const JOINS = 'src/words/field-fault.ts'

test('nothing asks a sentence of ours what it means', () => {
  expect(sources.filter(({ file }) => file !== JOINS).flatMap((it) => readsBack(it, phrases))).toEqual([])
})

test('the test sees it: by its name, by where it came from, by its type, by its words', () => {
  const planted = program.find(({ file }) => file.endsWith('planted/reads-back.ts'))!
  const source = planted.source.text
  const expected = source.slice(source.indexOf('PLANTED = ['), source.indexOf(']', source.indexOf('PLANTED')))
  const asked = readsBack(planted, phrases).map((it) => it.replace(/^.*?: /, ''))
  expect(asked).toHaveLength(expected.trim().split('\n').length - 1)
  for (const it of asked) expect(expected).toContain(it)
})
