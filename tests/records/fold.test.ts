import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { plainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import type { AsBuilt } from '../../src/records/as-built.ts'
import { statedValue } from '../../src/records/claim.ts'
import { asBuiltOn } from '../../src/records/fold.ts'
import { filed } from './permits.ts'

const day = (text: string) => must(plainDate(text))
const part = (asBuilt: AsBuilt, label: string) => asBuilt.components.filter((known) => known.label === label)

const card1958 = filed('p1958', {
  number: '58-114',
  kind: 'new',
  issuedOn: '4/2/58',
  approvedOn: '6/10/58',
  bedrooms: 3,
  components: [
    { tag: 'tank 1', kind: 'tank', capacity: '1,000 gal', material: 'steel' },
    { tag: 'sewer', kind: 'building-sewer', material: 'cast-iron', pipeDiameter: '4 in' },
    { tag: 'pit 1', kind: 'seepage-pit', diameter: '6 ft', effectiveDepth: '8 ft' },
  ],
})

const repair1985 = filed('p1985', {
  number: '85-R-77',
  kind: 'repair',
  issuedOn: '1985-05-20',
  approvedOn: '1985-06-03',
  components: [
    { tag: 'tank 1', kind: 'tank', action: 'replace', capacity: '1,250 gal', material: 'concrete' },
    { tag: 'pit 2', kind: 'seepage-pit', action: 'add', diameter: '6 ft', effectiveDepth: '10 ft' },
  ],
})

describe('the as-built of a day', () => {
  test('before its approval a permit builds nothing', () => {
    const asBuilt = asBuiltOn([card1958], [], day('1958-06-09'))
    expect(asBuilt.components).toEqual([])
    expect(asBuilt.unapproved.map(({ number }) => number)).toEqual(['58-114'])
  })

  test('a repair replaces the tank and adds a pit; the day asked for decides what stands', () => {
    const before = asBuiltOn([repair1985, card1958], [], day('1985-06-02'))
    expect(part(before, 'tank 1').map(({ standing }) => standing)).toEqual(['in-service'])
    const after = asBuiltOn([repair1985, card1958], [], day('1985-06-03'))
    const [steel, concrete] = part(after, 'tank 1')
    expect(steel).toMatchObject({ standing: 'replaced', replacedBy: 'p1985/tank 1' })
    expect(concrete).toMatchObject({ standing: 'in-service', replaces: ['p1958/tank 1'] })
    expect(statedValue(concrete!.measures.capacity)?.gal).toBe(1250)
    expect(after.components.filter(({ kind }) => kind === 'seepage-pit')).toHaveLength(2)
    expect(after.contradictions).toEqual([])
  })

  test('every value keeps the paper it came from', () => {
    const { bedrooms } = asBuiltOn([card1958], [], day('2026-01-01'))
    expect(bedrooms).toMatchObject({
      state: 'stated',
      value: 3,
      origin: { permit: { number: '58-114' }, pointer: '/bedrooms', source: { kind: 'typed' } },
    })
  })

  test('an alteration changes in part and sets the design anew', () => {
    const addition = filed('p1972', {
      number: '72-A-9',
      kind: 'alteration',
      approvedOn: '1972-08-01',
      bedrooms: 4,
      components: [{ tag: 'pit 1', kind: 'seepage-pit', action: 'alter', effectiveDepth: '12 ft' }],
    })
    const asBuilt = asBuiltOn([card1958, addition], [], day('2026-01-01'))
    expect(statedValue(asBuilt.bedrooms)).toBe(4)
    const [pit] = part(asBuilt, 'pit 1')
    expect(statedValue(pit!.measures.effectiveDepth)?.ft).toBe(12)
    expect(statedValue(pit!.measures.diameter)?.ft).toBe(6)
    expect(pit!.events.map(({ what }) => what)).toEqual(['installed', 'altered'])
  })

  test('an abandonment of one thing, and of everything when it names none', () => {
    const one = filed('p1990', {
      number: '90-X-1',
      kind: 'abandonment',
      approvedOn: '1990-01-15',
      components: [{ tag: 'pit 1', kind: 'seepage-pit', action: 'abandon' }],
    })
    const all = filed('p2001', { number: '01-X-2', kind: 'abandonment', approvedOn: '2001-03-01' })
    const after = asBuiltOn([card1958, one], [], day('1999-01-01'))
    expect(after.components.map(({ label, standing }) => [label, standing])).toEqual([
      ['tank 1', 'in-service'],
      ['sewer', 'in-service'],
      ['pit 1', 'abandoned'],
    ])
    const gone = asBuiltOn([card1958, one, all], [], day('2026-01-01'))
    expect(gone.components.every(({ standing }) => standing === 'abandoned')).toBe(true)
  })

  test('two permits that each put the same thing in contradict each other, value by value', () => {
    const second = filed('p1958b', {
      number: '58-119',
      kind: 'new',
      approvedOn: '1958-07-01',
      bedrooms: 3,
      components: [{ tag: 'Tank 1', kind: 'tank', capacity: '750 gal', material: 'steel' }],
    })
    const asBuilt = asBuiltOn([card1958, second], [], day('2026-01-01'))
    const [tank] = part(asBuilt, 'tank 1')
    expect(tank!.measures.capacity).toMatchObject({
      state: 'contradictory',
      claims: [{ value: { gal: 1000 } }, { value: { gal: 750 } }],
    })
    expect(tank!.measures.material).toMatchObject({ state: 'stated', value: 'steel' })
    expect(asBuilt.contradictions).toHaveLength(1)
  })

  test('a replacement that does not say which of two it means is no guess', () => {
    const vague = filed('p1995', {
      number: '95-R-3',
      kind: 'repair',
      approvedOn: '1995-01-01',
      components: [{ tag: 'new pit', kind: 'seepage-pit', action: 'replace', diameter: '8 ft' }],
    })
    const asBuilt = asBuiltOn([card1958, repair1985, vague], [], day('2026-01-01'))
    expect(
      asBuilt.components.filter((known) => known.kind === 'seepage-pit').map(({ standing }) => standing),
    ).toEqual(['in-service', 'in-service', 'in-service'])
    expect(asBuilt.contradictions).toMatchObject([
      {
        gap: 'which-target',
        verb: 'replace',
        permit: '95-R-3',
        part: { label: 'new pit' },
        among: [{ label: 'pit 1' }, { label: 'pit 2' }],
      },
    ])
  })

  test('a repair that states another bedroom count contradicts the design', () => {
    const repair = filed('p1988', { number: '88-R-1', kind: 'repair', approvedOn: '1988-01-01', bedrooms: 4 })
    expect(asBuiltOn([card1958, repair], [], day('2026-01-01')).bedrooms.state).toBe('contradictory')
  })

  test('unreadable is a state of its own', () => {
    const smudged = filed('p1961', {
      number: '61-20',
      kind: 'new',
      approvedOn: '1961-01-01',
      components: [{ tag: 'tank', kind: 'tank', material: 'steel' }],
      unreadable: [{ pointer: '/components/0/capacity', note: 'first figure lost under the stamp: ?00 gal' }],
    })
    const [tank] = asBuiltOn([smudged], [], day('2026-01-01')).components
    expect(tank!.measures.capacity).toMatchObject({
      state: 'unreadable',
      origin: { pointer: '/components/0/capacity' },
    })
  })

  test('a correction holds wherever its permit does, and says whose decision it was', () => {
    const correction = {
      decision: 'd1',
      on: day('2026-02-01'),
      by: 'reviewer',
      permit: 'p1958',
      component: 'p1958/tank 1',
      field: 'capacity' as const,
      value: { gal: 600, halfStepGal: 0.5, asWritten: '600 gal' },
    }
    const [tank] = asBuiltOn([card1958], [correction], day('1970-01-01')).components
    expect(tank!.measures.capacity).toMatchObject({
      state: 'stated',
      value: { gal: 600 },
      origin: { source: { kind: 'correction', decision: 'd1' } },
    })
    expect(asBuiltOn([card1958], [correction], day('1950-01-01')).components).toEqual([])
  })

  test('lengths written two ways do not contradict each other', () => {
    const copy = filed('p1959', {
      number: '59-1',
      kind: 'new',
      approvedOn: '1959-01-01',
      components: [{ tag: 'pit 1', kind: 'seepage-pit', action: 'mention', diameter: '72 in' }],
    })
    const [pit] = part(asBuiltOn([card1958, copy], [], day('2026-01-01')), 'pit 1')
    expect(pit!.measures.diameter.state).toBe('stated')
  })

  test('the order in which papers were entered does not matter', () => {
    const papers = [
      card1958,
      repair1985,
      filed('p1990', { number: '90-1', kind: 'repair', approvedOn: '1990-02-02' }),
    ]
    fc.assert(
      fc.property(fc.shuffledSubarray(papers, { minLength: 3 }), (shuffled) => {
        expect(asBuiltOn(shuffled, [], day('2026-01-01'))).toEqual(asBuiltOn(papers, [], day('2026-01-01')))
      }),
    )
  })
})
