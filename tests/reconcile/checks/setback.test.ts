import { expect, test } from 'vitest'
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
