import { describe, expect, test } from 'vitest'
import { reconcile } from '../../../src/reconcile/reconcile.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, inputOf, kindsOf, outcomesOf, permit } from '../asked.ts'

const pit = (tag: string, kind = 'seepage-pit') =>
  ({ tag, kind, diameter: '6 ft', effectiveDepth: '8 ft' }) as never
const read = (label: string, below: string | null, kind = 'seepage-pit') =>
  ({
    key: `88-1/${label}`,
    label,
    kind,
    outcome: 'found',
    opened: 'cover-off',
    ...(below === null ? {} : { levelAboveInlet: { below } }),
  }) as never
const HOUSE = { bedroomsCounted: 3, backup: false, ground: 'dry' } as const
const room = (answer: ReturnType<typeof asked>) => outcomesOf(answer, 'room-left')

describe('room below the inlet of a pit, against half a day’s flow', () => {
  // Three bedrooms send 450 gpd; 1 in of a pit 6 ft across is 17.6 gal, so that half a day takes 12.8 in.
  test.each([
    ['20 in', 'suffices', []],
    ['7 in', 'falls-short', ['level-high']],
    ['12 3/4 in', 'too-close-to-call', []],
  ] as const)('%s below it: %s', (below, verdict, kinds) => {
    const answer = asked([permit([pit('pit')])], [read('pit', below)], HOUSE)
    expect(room(answer).map((it) => it.verdict)).toEqual([verdict])
    expect(kindsOf(answer)).toEqual(kinds)
  })

  test('says it with its figures', () => {
    const [outcome] = room(asked([permit([pit('pit')])], [read('pit', '7 in')], HOUSE))
    expect(reasonWords(outcome!)).toMatch(
      /^the pit has room for 123 ± \d+ gal below its inlet, against half a day’s flow of 225 gal/,
    )
    expect(outcome!.steps.map(({ numbers, result }) => `${numbers} = ${result}`)).toEqual([
      'π ÷ 4 × 6² × 0.583333 × 7.48052 = 123.4 gal',
      '0.5 × 450 = 225 gal',
      expect.stringMatching(/^2 × √\([\d.²+ ]+\) = 25.8643 gal$/),
      '123.4 + 25.8643 < 225 gal = too little room',
    ])
  })

  test('pits that share the flow share their room; one that nobody read may have what the others lack', () => {
    const two = permit([pit('pit 1'), pit('pit 2')])
    expect(room(asked([two], [read('pit 1', '8 in'), read('pit 2', '8 in')], HOUSE))[0]).toMatchObject({
      verdict: 'suffices',
      subject: { key: 'system' },
    })
    expect(room(asked([two], [read('pit 1', '8 in')], HOUSE))[0]).toMatchObject({
      verdict: 'cannot-tell',
      reason: { gaps: [{ gap: 'not-measured', part: { key: '88-1/pit 2' } }] },
    })
    expect(room(asked([two], [read('pit 1', '20 in')], HOUSE))[0]).toMatchObject({ verdict: 'suffices' })
  })

  test('a full pit is the level’s question, one without a diameter nobody’s', () => {
    expect(room(asked([permit([pit('pit')])], [read('pit', null)], HOUSE))).toEqual([])
    const bare = permit([{ tag: 'pit', kind: 'seepage-pit' }])
    expect(room(asked([bare], [read('pit', '7 in')], HOUSE))[0]).toMatchObject({
      verdict: 'cannot-tell',
      reason: { gaps: [{ gap: 'no-dimensions' }] },
    })
  })

  test('is not asked where no rule of the place asks it', () => {
    const input = inputOf([permit([pit('pit')])], { ...HOUSE, components: [read('pit', '7 in')] })
    expect(
      reconcile({ ...input, county: 'wisconsin' }).outcomes.filter(({ check }) => check === 'room-left'),
    ).toEqual([])
  })
})

test('Massachusetts asks 6 in of a cesspool as well, and of no pit', () => {
  const input = inputOf([permit([pit('cesspool', 'cesspool')])], {
    ...HOUSE,
    bedroomsCounted: 1,
    components: [
      { ...(read('cesspool', '5 in', 'cesspool') as object), diameter: '20 ft, checked' } as never,
    ],
  })
  const answer = (county: string) =>
    reconcile({ ...input, county }).outcomes.filter(({ check }) => check === 'room-left')
  expect(answer('massachusetts')[0]).toMatchObject({
    verdict: 'falls-short',
    reason: { below: { least: { value: 6, unit: 'in' } }, source: 'second-hand' },
  })
})

describe('a privy', () => {
  const PRIVY = permit([{ tag: 'privy', kind: 'privy' }])
  const privy = (more: object) =>
    ({ key: '88-1/privy', label: 'privy', kind: 'privy', outcome: 'found', ...more }) as never

  test.each([
    ['9 in', ['solids-high']],
    ['4 ft', []],
  ] as const)('with %s left over its contents', (roomBelowTop, kinds) => {
    const answer = asked([PRIVY], [privy({ opened: 'cover-off', roomBelowTop })], HOUSE)
    expect(kindsOf(answer)).toEqual(kinds)
  })

  test('that nobody looked into is not inspected', () => {
    const answer = asked([PRIVY], [privy({ opened: 'not-opened', notOpenedBecause: 'refused' })], HOUSE)
    expect(answer.discrepancies.map(({ kind, outcome }) => [kind, outcome.facet])).toEqual([
      ['inspection-incomplete', 'privy-opened'],
    ])
  })

  test('is replaced at a transfer where the law says so', () => {
    const input = inputOf([PRIVY], { ...HOUSE, components: [privy({ opened: 'cover-off' })] })
    const { discrepancies } = reconcile({ ...input, county: 'new-jersey' })
    expect(discrepancies).toContainEqual(
      expect.objectContaining({ kind: 'type-not-accepted', severity: 'action', act: 'replace-at-transfer' }),
    )
  })
})
