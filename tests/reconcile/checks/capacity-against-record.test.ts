import { describe, expect, test } from 'vitest'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, outcomesOf, permit } from '../asked.ts'

const ONE_THOUSAND = permit([{ tag: 'tank 1', kind: 'tank', capacity: '1,000 gal' }])
const tank = (length: unknown, width: unknown, liquidDepth: unknown) =>
  ({
    key: '88-1/tank 1',
    label: 'tank 1',
    kind: 'tank',
    outcome: 'found',
    length,
    width,
    liquidDepth,
  }) as never
const answer = (length: unknown, width: unknown, liquidDepth: unknown) => {
  const [outcome] = outcomesOf(
    asked([ONE_THOUSAND], [tank(length, width, liquidDepth)]),
    'capacity-against-record',
  )
  return outcome!
}

describe('capacity against the record', () => {
  // 8 × 4 × 4 ft: 128 cu ft × 1728 ÷ 231 = 957.5 gal, 4.25 % under 1,000 and so within the nominal 5 %.
  test('within the nominal tolerance it agrees', () => {
    expect(answer('8 ft', '4 ft', '4 ft')).toMatchObject({ verdict: 'agrees', raises: null })
  })

  // 7.75 × 4 × 4 ft: 124 cu ft = 927.6 gal, 7.2 % under: outside the tolerance, inside it by the readings' own 26 gal.
  test('outside it, but within the uncertainty as well, it agrees and says so', () => {
    const outcome = answer(`7'-9"`, '4 ft', '4 ft')
    expect(outcome).toMatchObject({ verdict: 'agrees', certainty: { word: 'likely' } })
    expect(reasonWords(outcome)).toContain('only because of the measurement’s uncertainty')
  })

  // 7 × 4 × 3.5 ft: 98 cu ft = 733 gal.
  test('beyond both it is smaller', () => {
    expect(answer('7 ft', '4 ft', `3'-6"`)).toMatchObject({
      verdict: 'differs',
      raises: 'capacity-below-record',
    })
  })

  // 9 × 5 × 4.5 ft: 202.5 cu ft = 1,515 gal.
  test('and the other way round larger', () => {
    expect(answer('9 ft', '5 ft', `4'-6"`)).toMatchObject({
      verdict: 'differs',
      raises: 'capacity-above-record',
    })
  })

  test('a width judged by eye decides nothing, and is the measurement named', () => {
    const outcome = answer('8 ft', { length: '4 ft', method: 'by-eye' }, '4 ft')
    expect(outcome).toMatchObject({ verdict: 'cannot-tell', raises: 'measurement-unclear' })
    expect(outcome.wouldSettle).toMatchObject({ settles: true })
    expect(outcome.wouldSettle?.measurement).toMatchObject({
      thing: 'inside-width',
      part: { label: 'tank 1' },
    })
  })

  test('a length judged by eye is named before a depth sounded with a rod', () => {
    expect(
      answer({ length: '8 ft', method: 'by-eye' }, '4 ft', '4 ft').wouldSettle?.measurement,
    ).toMatchObject({
      thing: 'inside-length',
    })
  })

  test('outside dimensions lose their walls, once at each end', () => {
    // 8'-6" × 4'-6" outside less 3 in walls: 8 × 4 ft.
    const outside = { length: `8'-6"`, method: 'outside-tape' }
    const found = {
      ...(tank(outside, { length: `4'-6"`, method: 'outside-tape' }, '4 ft') as object),
      wallThickness: { length: '3 in', method: 'rigid-rule' },
    } as never
    const [outcome] = outcomesOf(asked([ONE_THOUSAND], [found]), 'capacity-against-record')
    expect(reasonWords(outcome!)).toMatch(/^tank 1 holds 95[678]/)
  })

  test('with no dimensions taken the question stays open, and nothing is raised', () => {
    expect(answer(null, null, null)).toMatchObject({ verdict: 'cannot-tell', raises: null })
  })

  test('the steps carry the numbers', () => {
    const { steps } = answer('8 ft', '4 ft', '4 ft')
    expect(steps.some(({ numbers }) => numbers.includes('1728'))).toBe(true)
    expect(steps.at(-1)?.result).toBe('agrees')
  })
})
