import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { parseCount } from '../../../src/measure/parse/count.ts'
import { parseLength } from '../../../src/measure/parse/length.ts'
import { numberWordsInFigures } from '../../../src/measure/parse/number-words.ts'
import { parseVolume } from '../../../src/measure/parse/volume.ts'

const SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  )
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')

function spelled(count: number, withAnd: boolean): string {
  if (count < 20) return SMALL[count]!
  if (count < 100)
    return TENS[Math.floor(count / 10) - 2]! + (count % 10 === 0 ? '' : `-${SMALL[count % 10]}`)
  const [size, name] = count < 1000 ? [100, 'hundred'] : [1000, 'thousand']
  const rest = count % size
  const joined = withAnd && rest < 100 ? ' and ' : ' '
  return `${spelled(Math.floor(count / size), withAnd)} ${name}${rest === 0 ? '' : joined + spelled(rest, withAnd)}`
}

describe('numbers in words', () => {
  test.each([
    ['one thousand gallons', '1000 gallons'],
    ['a thousand gallons', '1000 gallons'],
    ['one thousand two hundred and fifty gallons', '1250 gallons'],
    ['fifteen hundred gallon', '1500 gallon'],
    ['twelve hundred fifty', '1250'],
    ['Seven Hundred Fifty (750) gallons', '750 gallons'],
    ['one thousand (1,000) gallons', '1,000 gallons'],
    ['two (2)', '2'],
    ['four feet six inches', '4 feet 6 inches'],
    ['forty-two feet', '42 feet'],
    ['four and one-half feet', '4 1/2 feet'],
    ['six and a half inches', '6 1/2 inches'],
    ['three-quarters of an inch', '3/4 inch'],
    ['half a foot', '1/2 foot'],
    ['ninety nine thousand nine hundred ninety nine', '99999'],
    ['zero', '0'],
  ])('%s', (written, figures) => expect(numberWordsInFigures(written)).toBe(figures))

  test.each([
    'two one',
    'five-forty',
    'hundred',
    'thousand',
    'ten five',
    'a tank',
    'tent',
    'tone',
    'two (3)',
  ])('%s is not made into a number', (written) => expect(numberWordsInFigures(written)).not.toMatch(/^\d+$/))

  test('every number to 99,999, spelled out, is that number', () =>
    fc.assert(
      fc.property(fc.nat({ max: 99_999 }), fc.boolean(), (count, withAnd) => {
        expect(numberWordsInFigures(spelled(count, withAnd))).toBe(String(count))
      }),
    ))

  test('in lengths, volumes and counts', () => {
    expect(must(parseLength('four feet six inches')).ft).toBe(4.5)
    expect(must(parseLength('four and one half feet')).ft).toBe(4.5)
    expect(must(parseVolume('one thousand (1,000) gallon tank')).gal).toBe(1000)
    expect(must(parseCount('twenty-four bedrooms')).count).toBe(24)
    expect(parseVolume('one thousand (1,200) gallons').ok).toBe(false)
    expect(parseCount('two one').ok).toBe(false)
  })
})
