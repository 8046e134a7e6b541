import { describe, expect, test } from 'vitest'
import { asBuiltOn } from '../../src/records/fold.ts'
import { asked, day, inputOf, kindsOf, outcomesOf, permit } from '../reconcile/asked.ts'

const tank = { tag: 'tank', kind: 'tank', capacity: '1,000 gal' } as const
const built = (permits: Parameters<typeof inputOf>[0], on: string) =>
  asBuiltOn(inputOf(permits, null).permits, [], day(on))

describe('permits dated to the month or the year', () => {
  const card = permit([tank], { number: '77-9', issuedOn: '9/77', approvedOn: '1977' })
  test('stand for every day after it, and for none before', () => {
    expect(built([card], '1978-01-01').components).toHaveLength(1)
    expect(built([card], '1976-12-31').components).toHaveLength(0)
    expect(built([card], '1976-12-31').contradictions).toEqual([])
  })
  test('on a day within, whether it was approved cannot be told', () => {
    expect(built([card], '1977-06-01').contradictions).toMatchObject([
      { gap: 'approved-when', permits: [{ number: '77-9', issuedOn: '1977-09', approvedOn: '1977' }] },
    ])
  })
  test('a repair of the same year comes after what it replaces', () => {
    const repair = permit([{ ...tank, tag: 'tank', action: 'replace' }], {
      number: '77-1',
      kind: 'repair',
      issuedOn: '1977',
      approvedOn: '1977',
    })
    const file = built([{ ...card, issuedOn: '1977' }, repair], '1980-01-01')
    expect(file.contradictions).toEqual([])
    expect(file.components.map(({ standing }) => standing)).toEqual(['replaced', 'in-service'])
  })
  test('two that both set the design leave it open, and it is said', () => {
    const alteration = (number: string, bedrooms: number) =>
      permit([], { number, kind: 'alteration', issuedOn: null, approvedOn: '1980', bedrooms })
    const file = built([card, alteration('80-1', 4), alteration('80-2', 5)], '1990-01-01')
    expect(file.contradictions).toMatchObject([
      { gap: 'order-unclear', permits: [{ number: '80-1' }, { number: '80-2' }] },
    ])
    expect(built([card, alteration('80-1', 4), alteration('80-2', 4)], '1990-01-01').contradictions).toEqual(
      [],
    )
  })
})

describe('rules of a day that is known to the year', () => {
  const capacity = (approvedOn: string) =>
    outcomesOf(
      asked(
        [permit([tank], { number: 'a', issuedOn: null, approvedOn })],
        [
          {
            key: 'a/tank',
            label: 'tank',
            kind: 'tank',
            outcome: 'found',
            length: `8'-0"`,
            width: `4'-6"`,
            liquidDepth: '4 ft',
          },
        ],
      ),
      'capacity-against-code',
    ).find(({ facet }) => facet === 'when permitted')!
  test('are answered where the rule is one all year', () => {
    expect(capacity('1988').verdict).not.toBe('cannot-tell')
    expect(capacity('1988').reason).toEqual(capacity('1988-05-01').reason)
  })
  test('and cannot be told where it changed within the year', () => {
    const changed = [...Array(40).keys()]
      .map((n) => String(1960 + n))
      .map(capacity)
      .filter(({ verdict }) => verdict === 'cannot-tell')
    const unclear = changed.filter(
      ({ reason }) => reason.is === 'no-rule' && reason.rules.some(({ state }) => state === 'day-unclear'),
    )
    expect(unclear.length).toBeGreaterThan(0)
  })
})

test('a permit approved in the year of the inspection: whether the inspection is older than the work cannot be told', () => {
  const answer = asked(
    [permit([tank]), permit([], { number: '26-1', kind: 'repair', issuedOn: null, approvedOn: '2026' })],
    [],
  )
  expect(kindsOf(answer)).toContain('record-unclear')
  expect(outcomesOf(answer, 'findings-age')[0]!.verdict).toBe('cannot-tell')
})
