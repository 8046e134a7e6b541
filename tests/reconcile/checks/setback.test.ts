import { describe, expect, test } from 'vitest'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, kindsOf, outcomesOf, permit } from '../asked.ts'

const reference = { a: 'NW corner', b: 'NE corner', baseline: '40 ft', wall: 'rear' } as const
const pit = { tag: 'pit', kind: 'seepage-pit', tie: { a: '40 ft', b: '40 ft', side: 'away' } } as const
const well = (tag: string, a: string, b: string, side: 'away' | 'toward' | null) =>
  ({ tag, kind: 'well', tie: { a, b, side } }) as const
const answer = (...wells: ReturnType<typeof well>[]) =>
  asked(
    [
      permit([pit, ...wells], {
        number: '92-1',
        issuedOn: '1992-03-01',
        approvedOn: '1992-05-01',
        reference,
      }),
    ],
    [],
  )

// The pit lies at (20, 34.6): 40 ft from both corners of a 40 ft wall. The county's table of 1992 asks for 100 ft.
test('of several wells the one it stands worst with is told', () => {
  // (20, −34.6) is 69.3 ft from the pit; (20, −111) is 146 ft.
  const told = answer(
    well('far well', '113 ft', '113 ft', 'toward'),
    well('near well', '40 ft', '40 ft', 'toward'),
  )
  expect(kindsOf(told)).toContain('setback-short')
  const outcomes = outcomesOf(told, 'setback')
  expect(outcomes).toHaveLength(1)
  expect(reasonWords(outcomes[0]!)).toMatch(/69'.*from the near well.*100 ft/)
})

test('a well whose side nobody says leaves it open, and never falls short by guess', () => {
  const told = answer(well('well', '100 ft', '100 ft', null))
  expect(kindsOf(told)).not.toContain('setback-short')
  expect(outcomesOf(told, 'setback')[0]).toMatchObject({ verdict: 'too-close-to-call' })
})

test('a hundred parts and wells are no burden', () => {
  const many = permit(
    [
      ...Array.from({ length: 50 }, (_, i) => ({ ...pit, tag: `pit ${i}` })),
      ...Array.from({ length: 50 }, (_, i) => well(`well ${i}`, `${90 + i} ft`, `${90 + i} ft`, 'toward')),
    ],
    { number: '92-1', issuedOn: '1992-03-01', approvedOn: '1992-05-01', reference },
  )
  const told = asked([many], [])
  expect(outcomesOf(told, 'setback')).toHaveLength(50)
  expect(JSON.stringify(told).length).toBeLessThan(6_000_000)
})

describe('from outline to outline', () => {
  const trench = (more: object) => ({
    tag: 'trench',
    kind: 'trench' as const,
    length: '80 ft',
    width: '3 ft',
    tie: { a: '40 ft', b: '40 ft', side: 'away' as const },
    ...more,
  })
  const told = (part: object, ...wells: ReturnType<typeof well>[]) =>
    asked(
      [
        permit([part, ...wells] as never, {
          number: '92-1',
          issuedOn: '1992-03-01',
          approvedOn: '1992-05-01',
          reference,
        }),
      ],
      [],
    )
  // (20, 144.6) is 110 ft straight out from where the trench is tied.
  const far = well('well', '146 ft', '146 ft', 'away')

  test('an 80 ft trench tied once, its tie 110 ft from the well, is not said to keep 100 ft', () => {
    const [outcome] = outcomesOf(told(trench({}), far), 'setback')
    expect(outcome).toMatchObject({ verdict: 'too-close-to-call', reason: { span: 'at-least' } })
    expect(reasonWords(outcome!)).toMatch(/^the trench is at least 3\d'-.*which way it runs/)
  })

  test('along the wall it keeps them, square to it that stays open', () => {
    const verdicts = ['along-wall', 'square-to-wall'].map(
      (runs) => outcomesOf(told(trench({ runs }), far), 'setback')[0]!.verdict,
    )
    expect(verdicts).toEqual(['suffices', 'too-close-to-call'])
  })

  test('a part whose size nobody says is not said to keep its distance, and can fall short of it', () => {
    const pitAt = (a: string) => outcomesOf(told(pit, well('well', a, a, 'away')), 'setback')[0]!
    expect(pitAt('160 ft')).toMatchObject({ verdict: 'too-close-to-call', reason: { span: 'size-unknown' } })
    expect(pitAt('80 ft').verdict).toBe('falls-short')
  })
})

describe('what is there is what counts', () => {
  const record = (more: object[] = []) =>
    permit([{ ...pit, diameter: '8 ft' }, ...more] as never, {
      number: '06-1',
      issuedOn: '2006-03-01',
      approvedOn: '2006-05-01',
      reference,
    })
  const seen = (kind: string, a: string, side: 'away' | 'toward', more: object = {}) =>
    ({ label: `the ${kind}`, kind, outcome: 'found', tie: { a, b: a, side }, ...more }) as never

  test('a part that no permit shows is asked of today’s law, from where it was found', () => {
    const answer = asked(
      [record([well('well', '113 ft', '113 ft', 'toward')])],
      [seen('tank', '90 ft', 'toward')],
      { reference },
    )
    const about = outcomesOf(answer, 'setback-today').filter(({ subject }) => !subject.onRecord)
    expect(about).toMatchObject([{ facet: 'today', verdict: 'falls-short' }])
  })

  test('a well on record that was searched for and is not there is no answer', () => {
    const answer = asked(
      [record([well('old well', '40 ft', '40 ft', 'toward')])],
      [
        {
          key: '06-1/old well',
          label: 'old well',
          kind: 'well',
          outcome: 'not-found',
          searchedBy: ['excavation'],
        } as never,
      ],
      { reference },
    )
    expect(outcomesOf(answer, 'setback')).toEqual([])
  })

  test('the wall that the ties run from is a wall of the house', () => {
    // The pit's middle is 34.6 ft out from the wall, its edge 4 ft nearer; its permit's day required 20 ft.
    const [outcome] = outcomesOf(asked([record()], []), 'building-setback')
    expect(outcome).toMatchObject({ verdict: 'suffices' })
    expect(reasonWords(outcome!)).toMatch(/^the pit is 30'-\d.* from the house; the rule requires 20 ft/)
  })
})
