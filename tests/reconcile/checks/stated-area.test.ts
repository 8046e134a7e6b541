import { describe, expect, test } from 'vitest'
import { permitEntry } from '../../../src/reading/entry/permit.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, kindsOf, outcomesOf, permit } from '../asked.ts'

const day = { number: '06-1', issuedOn: '2006-03-01', approvedOn: '2006-05-01', percRateMpi: '12' } as const
const record = (part: object) => [permit([{ tag: 'bed', kind: 'bed', ...part }] as never, day)]
const found = (more: object) => [
  { key: '06-1/bed', label: 'bed', kind: 'bed', outcome: 'found', ...more } as never,
]
const told = (part: object, more: object | null = null) =>
  asked(record(part), more === null ? [] : found(more))
const own = (answer: ReturnType<typeof told>) => outcomesOf(answer, 'stated-area')
const code = (answer: ReturnType<typeof told>) =>
  outcomesOf(answer, 'absorption-against-code').map(({ facet, verdict, reason }) => [
    facet,
    verdict,
    'provided' in reason ? reason.provided.value : null,
  ])

describe('a permit that states an area and no dimensions', () => {
  // Three bedrooms at 12 min/in: County Code 9.14 of 2004.
  test('is held against the code of its day and today’s by that area', () => {
    const answers = [2000, 60].map((area) => code(told({ area })))
    expect(answers.map((each) => each.map(([facet, verdict]) => [facet, verdict]))).toEqual([
      [
        ['when permitted', 'suffices'],
        ['today', 'suffices'],
      ],
      [
        ['when permitted', 'falls-short'],
        ['today', 'falls-short'],
      ],
    ])
    expect(answers[0]!.map(([, , area]) => area)).toEqual([2000, 2000])
  })

  test('without an area either, nothing can be told', () => {
    expect(code(told({})).map(([, verdict]) => verdict)).toEqual(['cannot-tell', 'cannot-tell'])
  })

  test('dimensions that were measured count before it', () => {
    expect(code(told({ area: 2000 }, { length: '20 ft', width: '10 ft' })).map(([, , area]) => area)).toEqual(
      [200, 200],
    )
  })
})

describe('an area and dimensions', () => {
  test('that come to it agree', () => {
    expect(own(told({ area: 600, length: '50 ft', width: '12 ft' }))).toMatchObject([
      { verdict: 'agrees', certainty: { basis: 'as-stated' } },
    ])
  })

  test('of bottom and sidewall, where the card counted both, agree too', () => {
    // 50 × 12 + 2 × (50 + 12) × 1 = 724.
    expect(own(told({ area: 724, length: '50 ft', width: '12 ft', effectiveDepth: '12 in' }))).toMatchObject([
      { verdict: 'agrees', reason: { surface: 'bottom-and-sidewall' } },
    ])
  })

  test('on one permit that do not, contradict each other', () => {
    const answer = told({ area: 900, length: '50 ft', width: '12 ft' })
    expect(kindsOf(answer)).toContain('absorption-differs')
    expect(reasonWords(own(answer)[0]!)).toMatch(
      /^the dimensions of the bed on record come to 600.* sq ft by its bottom; the record states 900 sq ft/,
    )
  })

  test('as found, smaller than stated, differ and are reviewed', () => {
    const answer = told({ area: 900 }, { length: '40 ft', width: '12 ft' })
    const [difference] = answer.discrepancies.filter(({ kind }) => kind === 'absorption-differs')
    expect(difference).toMatchObject({
      severity: 'review',
      outcome: { reason: { by: 'inspection', comes: 'smaller', recorded: { value: 900 } } },
    })
    expect(difference!.outcome.reason).toHaveProperty('computed.value', 480)
  })

  test('paced roughly tell nothing', () => {
    const rough = {
      length: { length: '46 ft', method: 'by-eye' },
      width: { length: '12 ft', method: 'by-eye' },
    }
    expect(own(told({ area: 600 }, rough))[0]!.verdict).not.toBe('differs')
  })
})

test('an area is read as people write it, and asked about where it is no drainfield’s', () => {
  const read = (area: unknown) =>
    permitEntry.safeParse(permit([{ tag: 'bed', kind: 'bed', area }] as never, day))
  expect(read('900 sq. ft.').data?.components[0]?.area).toBe(900)
  expect(read('900').data?.components[0]?.area).toBe(900)
  expect(read('20 x 30').error?.issues[0]?.message).toContain('600 sq ft')
  expect(read('3 sq ft').error?.issues[0]?.path).toEqual(['components', 0, 'area'])
  expect(read('900 gal').error?.issues[0]?.message).toContain('volume and not an area')
})
