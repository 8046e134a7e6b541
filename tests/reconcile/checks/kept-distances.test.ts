import { describe, expect, test } from 'vitest'
import { consequenceOf } from '../../../src/reconcile/consequence.ts'
import { KEPT_FROM, KEPT_FROM_NAMES } from '../../../src/reconcile/kept-from.ts'
import { reconcile } from '../../../src/reconcile/reconcile.ts'
import { placeOf } from '../../../src/rules/pack.ts'
import { GENERAL_TO, type SetbackFrom, type SetbackTo } from '../../../src/rules/things.ts'
import type { SetbackTable } from '../../../src/rules/values/setback-table.ts'
import { discrepancyWords } from '../../../src/words/follow-up.ts'
import { questionWords } from '../../../src/words/questions.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, book, inputOf, kindsOf, outcomesOf, permit } from '../asked.ts'

const tank = { tag: 'tank', kind: 'tank', capacity: '1,000 gal' } as const
const bed = { tag: 'bed', kind: 'bed', length: '30 ft', width: '12 ft' } as const
const day = { number: '06-1', issuedOn: '2006-03-01', approvedOn: '2006-05-01' } as const
const found = (of: string, more: object) =>
  ({ key: `06-1/${of}`, label: of, kind: of, outcome: 'found', ...more }) as never
const only = (answer: ReturnType<typeof asked>, check: string, from: string, key: string) =>
  outcomesOf(answer, check).find(({ facet, subject }) => facet === from && subject.key === key)

// County Code 9.15, Table 2, of 2004: tank and absorption area 10 ft from the property line and the water line; 50 and 100 ft
// from surface water; 10 and 20 ft from a pool.
describe('what a permit states is held against the rule of its day', () => {
  const told = (part: object, distances: object) =>
    asked([permit([{ ...part, ...distances }] as never, day)], [])

  test.each([
    [tank, { toPropertyLine: '10 ft' }, 'property-line', 'suffices'],
    [tank, { toPropertyLine: '9 ft' }, 'property-line', 'falls-short'],
    [bed, { toSurfaceWater: '100 ft' }, 'surface-water', 'suffices'],
    [bed, { toSurfaceWater: '80 ft' }, 'surface-water', 'falls-short'],
    [tank, { toSurfaceWater: '80 ft' }, 'surface-water', 'suffices'],
    [tank, { toWaterLine: '6 ft' }, 'water-line', 'falls-short'],
    [bed, { toPool: '15 ft' }, 'pool', 'falls-short'],
    [tank, { toPool: '15 ft' }, 'pool', 'suffices'],
    [tank, { toPropertyLine: 'about 10 ft' }, 'property-line', 'too-close-to-call'],
  ] as const)('%o %o', (part, distances, from, verdict) => {
    const [outcome] = outcomesOf(told(part, distances), 'kept-distances').filter(
      ({ facet }) => facet === from,
    )
    expect(outcome).toMatchObject({ verdict, raises: verdict === 'falls-short' ? 'setback-short' : null })
  })

  test('it says that nobody measured it, and a reviewer decides', () => {
    const answer = told(tank, { toPropertyLine: '9 ft' })
    const [difference] = answer.discrepancies.filter(({ kind }) => kind === 'setback-short')
    expect(difference).toMatchObject({ severity: 'review', act: 'decide-whether-it-may-stay' })
    expect(difference!.outcome.certainty).toEqual({ word: 'likely', basis: 'as-stated' })
    expect(reasonWords(difference!.outcome)).toMatch(
      /^the tank is 9'-0" from the property line, as the permit states it; the rule requires 10 ft/,
    )
    expect(discrepancyWords(difference!, 'reviewer')).toContain('Look for a variance, and decide')
  })

  test('a well too near by the permit’s own figure has to be tested', () => {
    const [difference] = told(bed, { toWell: '60 ft' }).discrepancies.filter(
      ({ kind }) => kind === 'setback-short',
    )
    expect(difference).toMatchObject({ severity: 'action', act: 'test-water' })
  })

  test('what nobody says is asked of the property line, which every lot has, and of nothing else', () => {
    const about = outcomesOf(told(tank, {}), 'kept-distances')
    expect(about.map(({ facet, verdict }) => [facet, verdict])).toEqual([['property-line', 'cannot-tell']])
    expect(reasonWords(about[0]!)).toBe(
      'neither the record nor the inspection says how far the tank is from the property line',
    )
    expect(questionWords('kept-distances', 'property-line')).toBe('Is it far enough from the property line?')
  })
})

describe('the inspection’s tape decides', () => {
  const record = (distances: object) => [permit([{ ...tank, ...distances }, bed] as never, day)]

  test('over what the permit states, with its own uncertainty', () => {
    const answer = asked(record({ toPropertyLine: '15 ft' }), [found('tank', { toPropertyLine: '8 ft' })])
    expect(only(answer, 'kept-distances', 'property-line', '06-1/tank')).toMatchObject({
      verdict: 'falls-short',
      reason: { how: 'taped', distance: { value: 8 } },
    })
  })

  test('a tape that reads the limit is too close to call', () => {
    const answer = asked(record({}), [found('tank', { toPropertyLine: '10 ft' })])
    expect(only(answer, 'kept-distances', 'property-line', '06-1/tank')).toMatchObject({
      verdict: 'too-close-to-call',
    })
  })

  test('by pacing it is rougher than by tape', () => {
    const verdict = (method: string) =>
      only(
        asked(record({}), [found('tank', { toPropertyLine: { length: '11 ft', method } })]),
        'kept-distances',
        'property-line',
        '06-1/tank',
      )!.verdict
    expect([verdict('ground-tape'), verdict('by-eye')]).toEqual(['suffices', 'too-close-to-call'])
  })

  test('and a part that no permit shows is asked by today’s rule', () => {
    const answer = asked(record({}), [
      { label: 'pit', kind: 'seepage-pit', outcome: 'found', toPropertyLine: '4 ft' } as never,
    ])
    const short = outcomesOf(answer, 'kept-distances-today').filter(
      ({ verdict }) => verdict === 'falls-short',
    )
    expect(short).toMatchObject([{ facet: 'property-line', subject: { onRecord: false } }])
    expect(short.map((it) => consequenceOf('setback-short', it).severity)).toEqual(['note'])
  })
})

describe('a stated distance against a taped one', () => {
  const both = (stated: string, taped: string) =>
    asked(
      [permit([{ ...tank, toPropertyLine: stated }] as never, day)],
      [found('tank', { toPropertyLine: taped })],
    )

  test('beyond the uncertainty of both it differs, and says how unlikely chance is', () => {
    const answer = both('20 ft', '14 ft')
    expect(kindsOf(answer)).toContain('position-differs')
    const [outcome] = outcomesOf(answer, 'stated-distance')
    expect(outcome).toMatchObject({ verdict: 'differs', facet: 'property-line', reason: { comes: 'nearer' } })
    expect(outcome!.certainty.word).toBe('firm')
    expect(reasonWords(outcome!)).toMatch(
      /^from the tank to the property line the inspection taped 14'-0" ± .*; the record says 20'-0" ±/,
    )
  })

  test('within it, it agrees', () => {
    expect(outcomesOf(both('20 ft', '20.4 ft'), 'stated-distance')).toMatchObject([{ verdict: 'agrees' }])
  })
})

describe('where a table knows only what falls under a thing', () => {
  // 310 CMR 15.211 has 10 ft from a slab and 20 ft from a basement wall, and no row for the house itself.
  const inMassachusetts = (toBuilding: string) => {
    const input = inputOf([permit([{ ...bed, toBuilding }] as never, day)], { components: [] })
    return outcomesOf(reconcile({ ...input, county: 'massachusetts' }), 'building-setback')[0]!
  }

  test('the strictest decides that it is enough, the mildest that it is not, and between them nothing is said', () => {
    expect(['25 ft', '8 ft', '15 ft'].map((ft) => inMassachusetts(ft).verdict)).toEqual([
      'suffices',
      'falls-short',
      'cannot-tell',
    ])
    expect(reasonWords(inMassachusetts('15 ft'))).toBe(
      '310 CMR 15.211 goes by what it is, which is not known: absorption to basement wall 20 ft, absorption to slab 10 ft',
    )
  })
})

describe('every pair that a pack has', () => {
  /** What no field names: whether a well irrigates or a pond is drunk from stands on none of the papers in hand. */
  const UNASKED: readonly SetbackTo[] = [
    'irrigation-well',
    'decommissioned-well',
    'public-spring',
    'cistern',
    'wetland-bordering-supply',
    'vernal-pool',
    'supply-reservoir',
    'supply-tributary',
    'supply-drain',
    'outbuilding',
    'catch-basin-or-dry-well',
    'downhill-slope',
  ]
  const KIND: { readonly [F in SetbackFrom]?: string } = { absorption: 'bed' }
  const asks = KEPT_FROM_NAMES.map((from) => ({ from, ...KEPT_FROM[from] }))
  const general = (to: SetbackTo): SetbackTo | undefined =>
    asks.some((it) => it.to === to) ? to : GENERAL_TO[to] && general(GENERAL_TO[to])
  const rows = [...book.packs.values()].flatMap((pack) =>
    pack.parameters.flatMap(({ name, entries }) =>
      name === 'setbacks' || name === 'setbacks.lender'
        ? entries.flatMap((entry) =>
            (entry.value as SetbackTable).rows
              .filter(({ when }) => when === null)
              .map((row) => ({ place: placeOf(pack.pack), name, on: entry.from ?? '1980-01-01', ...row })),
          )
        : [],
    ),
  )

  test('is asked by a field of its own or of the general thing, or is named here', () => {
    const unasked = new Set(rows.map(({ to }) => to).filter((to) => general(to) === undefined))
    expect([...unasked].sort()).toEqual([...UNASKED].sort())
  })

  const fielded = rows.filter(({ to, name }) => name === 'setbacks' && asks.some((it) => it.to === to))
  test.each(fielded)('$place: $from to $to, $ft ft', ({ place, on, from, to, ft }) => {
    const { field, from: facet } = asks.find((it) => it.to === to)!
    const at = (feet: number) => {
      const part = { tag: 'part', kind: KIND[from] ?? from, [field]: `${feet} ft` }
      const input = inputOf(
        [permit([part] as never, { number: '1', issuedOn: on, approvedOn: on } as never)],
        { components: [] },
      )
      return reconcile({ ...input, county: place }).outcomes.find(
        (it) =>
          ['setback', 'building-setback', 'kept-distances'].includes(it.check) &&
          (it.facet ?? (it.check === 'setback' ? 'well' : 'building')) === facet,
      )
    }
    expect(at(ft)).toMatchObject({ verdict: 'suffices', reason: { least: { value: ft } } })
    expect(at(ft / 2)).toMatchObject({ verdict: 'falls-short' })
  })
})
