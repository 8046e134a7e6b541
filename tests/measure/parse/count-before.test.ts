import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseArea } from '../../../src/measure/parse/area.ts'
import { parseFlow } from '../../../src/measure/parse/flow.ts'
import { parseLength } from '../../../src/measure/parse/length.ts'
import { parseVolume } from '../../../src/measure/parse/volume.ts'

const WORDS =
  'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  )

const refusal = (text: string, parse: typeof parseVolume | typeof parseLength = parseVolume) => {
  const read = parse(text)
  if (read.ok) throw new Error(`${text} was taken as ${JSON.stringify(read.value)}`)
  return read.error
}

describe('a count before a size is a number of tanks and never a thousands group', () => {
  test.each([
    ['two 500 gal', '2 tanks of 500 gal, or 2,500 gal?', ['500 gal', '2,500 gal']],
    ['2 500 gal', '2 tanks of 500 gal, or 2,500 gal?', ['500 gal', '2,500 gal']],
    ['one 500 gal', '1 tank of 500 gal, or 1,500 gal?', ['500 gal', '1,500 gal']],
    ['three 500 gal', '3 tanks of 500 gal, or 3,500 gal?', ['500 gal', '3,500 gal']],
    ['two 500-gallon tanks', '2 tanks of 500 gallon, or 2,500 gallon?', ['500 gallon', '2,500 gallon']],
    ['two five hundred gal tanks', '2 tanks of 500 gal', ['500 gal', '2,500 gal']],
    ['two (2) 500 gal', '2 tanks of 500 gal', ['500 gal', '2,500 gal']],
    ['two 1,000 gal', '2 tanks of 1,000 gal?', ['1,000 gal']],
    ['2 - 500 gal', '2 tanks of 500 gal?', ['500 gal']],
    ['2 @ 500 gal', '2 tanks of 500 gal?', ['500 gal']],
    ['2 x 500 gal', '2 tanks of 500 gal, or 1,000 gal in all?', ['500 gal', '1,000 gal']],
    ['1 000 gal', '1,000 gal?', ['1,000 gal']],
    ['3 785 L', '3 tanks of 785 L, or 3,785 L?', ['785 L', '3,785 L']],
    ['2\u00a0500 gal', '2 tanks of 500 gal', ['500 gal', '2,500 gal']],
    ['2\u202f500 gal', '2 tanks of 500 gal', ['500 gal', '2,500 gal']],
  ])('%s', (text, asks, readings) => {
    const issue = refusal(text)
    expect(issue.message).toContain(asks)
    expect(issue.readings).toEqual(readings)
    for (const reading of readings) expect(parseVolume(reading).ok, reading).toBe(true)
  })

  test('whatever the count, the size and what stands between', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.boolean(),
        fc.integer({ min: 100, max: 9999 }),
        fc.constantFrom(' ', '  ', '-', ' - ', ' x ', ' @ ', ' (', ' of '),
        fc.constantFrom(' gal', ' gallon', '-gal', ' gal.', ' gal tank', ' gallon tanks', ' L', ' cu ft'),
        (count, inWords, size, between, unit) => {
          fc.pre(between !== '-' || !inWords)
          const text = `${inWords ? WORDS[count - 1] : count}${between}${size}${between === ' (' ? ')' : ''}${unit}`
          const read = parseVolume(text)
          expect(read.ok, text).toBe(false)
          for (const reading of read.ok ? [] : (read.error.readings ?? []))
            expect(parseVolume(reading).ok, `${text}: ${reading}`).toBe(true)
        },
      ),
    )
  })

  test('a whole number in words, or with its comma, is still one size', () => {
    for (const text of ['two thousand gal', 'twelve hundred gal', '2,500 gal', '2500 gal', '12 gal'])
      expect(parseVolume(text).ok, text).toBe(true)
  })

  test('so with lengths, areas and flows', () => {
    expect(refusal('2 100 ft', parseLength)).toMatchObject({ readings: ['100 ft', '2,100 ft'] })
    expect(refusal('two 100 ft', parseLength).message).toContain('2 lengths of 100 ft, or 2,100 ft?')
    expect(parseLength('6 1/2 in').ok).toBe(true)
    expect(parseArea('3 300 sq ft').ok).toBe(false)
    expect(parseFlow('2 450 gpd').ok).toBe(false)
  })
})
