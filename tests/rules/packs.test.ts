import { describe, expect, test } from 'vitest'
import { addDays } from '../../src/base/plain-date.ts'
import { requiredCompartments } from '../../src/rules/apply/required-compartments.ts'
import { FILE_COPY, VERIFIED } from '../../src/rules/citation.ts'
import { inForce } from '../../src/rules/in-force.ts'
import {
  isParameterName,
  PARAMETER_NAMES,
  PARAMETERS,
  type ParameterName,
} from '../../src/rules/parameters.ts'
import { overlap } from '../../src/rules/span.ts'
import type { Range } from '../../src/rules/values/quantity.ts'
import pumpOut from '../oracles/solids/pump-out-years.json' with { type: 'json' }
import solids from '../oracles/solids/rules.json' with { type: 'json' }
import fittings from '../oracles/tank-fittings/state-rules.json' with { type: 'json' }
import { day } from './day.ts'
import { SHIPPED } from './shipped-book.ts'

const packs = [...SHIPPED.packs.values()]
const entries = packs.flatMap(({ pack, invented, parameters }) =>
  parameters.flatMap(({ name, entries }) => entries.map((entry) => ({ pack, invented, name, entry }))),
)
const citations = entries.flatMap(({ pack, invented, name, entry }) =>
  [...entry.citations, ...entry.contradictions.flatMap((it) => it.citations)].map((it) => ({
    pack,
    invented,
    name,
    it,
  })),
)
const value = <Name extends ParameterName>(place: string, name: Name, on = '2020-01-01') => {
  const answer = inForce(SHIPPED, place, name, day(on))
  if (answer.state !== 'in-force') throw new Error(`${place} ${name} on ${on}: ${answer.state}`)
  return answer
}

describe('every shipped pack', () => {
  test.each(citations)('$pack $name says how each source was verified', ({ it }) => {
    expect(VERIFIED).toContain(it.verified)
    if (it.verified === 'read' || it.verified === 'second-hand') {
      expect(it.readAt === FILE_COPY || URL.canParse(it.readAt ?? '')).toBe(true)
      expect(it.words?.length ?? 0).toBeLessThan(300)
    } else expect(it.readAt).toBeNull()
    if (it.verified === 'from-memory') expect(it.words).toBeNull()
  })

  test.each(
    entries.filter(({ pack, invented, name, entry }) => {
      const { kind } = SHIPPED.packs.get(pack)!.jurisdiction
      const law = !invented && (kind === 'state' || kind === 'county')
      return law && entry.from === null && PARAMETERS[name].layering === 'nearest'
    }),
  )('$pack $name: a law without a beginning says that it was not read', ({ entry }) => {
    expect(entry.note).toMatch(/began was not read|when it began nor when it ended was read/)
  })

  test.each(entries)('$pack $name: dates in order', ({ entry: { from, until } }) => {
    if (from !== null && until !== null) expect(from < until).toBe(true)
  })

  test.each(packs)('$pack: names in the register, no two entries on one day', ({ parameters }) => {
    for (const { name, entries } of parameters) {
      expect(isParameterName(name)).toBe(true)
      for (const [i, a] of entries.entries())
        for (const b of entries.slice(i + 1)) expect(overlap(a, b)).toBeNull()
    }
  })

  test('what is made up says so: in the pack and in the name of each of its documents', () => {
    const made = citations.filter((it) => it.invented && it.it.verified !== 'common-practice')
    expect(made.length).toBeGreaterThan(0)
    for (const { it } of made) expect(`${it.authority} ${it.document}`).toContain('invented')
    for (const { it } of citations.filter((each) => !each.invented))
      expect(it.document).not.toContain('invented')
  })
})

test('every parameter of the register is in some pack', () => {
  const used = new Set(entries.map((it) => it.name))
  expect(PARAMETER_NAMES.filter((name) => !used.has(name))).toEqual([])
})

test('what nobody has read is marked from memory wherever it is asked for', () => {
  const remembered = ['public-health-service', 'massachusetts', 'minnesota', 'texas']
  for (const place of remembered) expect(value(place, 'tank.minimum-capacity').verified).toBe('from-memory')
  for (const place of [
    'virginia',
    'north-carolina',
    'pennsylvania',
    'missouri-pattern',
    'nevada',
    'tennessee',
  ])
    expect(value(place, 'tank.minimum-capacity', '2024-06-01').verified).toBe('read')
  for (const place of ['upc', 'iowa', 'idaho', 'hawaii', 'north-dakota', 'south-carolina', 'alaska'])
    expect(value(place, 'tank.minimum-capacity', '2024-06-01').verified).toBe('second-hand')
  expect(value('ipsdc', 'tank.minimum-capacity').verified).toBe('second-hand')
  expect(value('fha', 'setbacks.lender').verified).toBe('second-hand')
})

describe('tank fittings by state', () => {
  const ends = (range: Range<string>) => [range.atLeast ?? range.moreThan, range.atMost ?? range.lessThan]
  for (const { source, place, on, values } of fittings.cases)
    test.each(Object.entries(values))(`${source}: %s`, (name, expected) => {
      const found = value(place, name as ParameterName, on).value as never
      if (Array.isArray(expected)) expect(ends(found)).toEqual(expected)
      else if ('verticalWalls' in expected) {
        const { verticalWalls, horizontalCylinder } = found as Record<string, Range<'pct'> | null>
        expect(ends(verticalWalls!)).toEqual(expected.verticalWalls)
        expect(horizontalCylinder ? ends(horizontalCylinder) : undefined).toEqual(expected.horizontalCylinder)
      } else if ('moreThan' in expected) expect(found).toMatchObject(expected)
      else {
        const { low, high } = (found as { firstShare: { low: number; high: number } }).firstShare
        expect([low, high]).toEqual(expected.firstShare)
        expect(requiredCompartments(found, { bedrooms: 3, gal: 1000 }).minimum).toBe(expected.minimum)
      }
    })
})

test('Ohio 2007: one or two compartments to three bedrooms, two from four', () => {
  const rule = value('ohio', 'tank.compartments-minimum', '2010-01-01').value
  expect(requiredCompartments(rule, { bedrooms: 3, gal: null })).toEqual({ minimum: 1, unsure: false })
  expect(requiredCompartments(rule, { bedrooms: 4, gal: null })).toEqual({ minimum: 2, unsure: false })
  expect(requiredCompartments(rule, { bedrooms: null, gal: null })).toEqual({ minimum: 1, unsure: true })
})

test('Ohio’s table of 2007 has ended, and what it was can still be told; the one before it is second-hand', () => {
  const answer = inForce(SHIPPED, 'ohio', 'tank.minimum-capacity', day('2020-01-01'))
  expect(answer).toMatchObject({
    state: 'ended',
    until: '2015-01-01',
    last: { value: { by: 'bedrooms' } },
    resumes: null,
  })
  expect(value('ohio', 'tank.minimum-capacity', '2007-07-29').verified).toBe('second-hand')
  expect(value('ohio', 'tank.minimum-capacity', '2007-07-30').verified).toBe('read')
  expect(inForce(SHIPPED, 'ohio', 'tank.minimum-capacity', day('1977-06-30'))).toEqual({
    state: 'not-yet',
    from: '1977-07-01',
    pack: 'ohio/tanks',
  })
})

describe('single published figures', () => {
  test('310 CMR 15.303(1)(a)6: a metal tank of 20 years', () => {
    expect(value('massachusetts', 'tank.metal-age-limit-years').value).toEqual({ amount: 20, unit: 'years' })
  })
  test('WAC 246-272A-0265(1): record drawings accurate to ±½ ft', () => {
    const it = value('washington', 'position.record-accuracy-ft')
    expect(it.value).toEqual({ amount: 0.5, unit: 'ft' })
    expect(it.citations[0].words).toContain('+/- 1/2 foot')
  })
  test('effluent filters: Wisconsin from 1 July 2000, North Carolina from 1 January 1999', () => {
    for (const [place, from] of [
      ['wisconsin', '2000-07-01'],
      ['north-carolina', '1999-01-01'],
    ] as const) {
      expect(value(place, 'effluent-filter.required', from).value.holds).toBe(true)
      const before = addDays(day(from), -1)
      expect(inForce(SHIPPED, place, 'effluent-filter.required', before).state).toBe('not-yet')
    }
  })
  test('Tennessee: two compartments from 1 January 1991', () => {
    expect(inForce(SHIPPED, 'tennessee', 'tank.compartments-minimum', day('1990-12-31')).state).toBe(
      'not-yet',
    )
  })
  test('large-capacity cesspools: none new from 5 April 2000, closed by 5 April 2005 (40 CFR 144 subpart G)', () => {
    const facts = value('federal', 'era-facts').value
    expect(facts.map((it) => it.from)).toEqual(['2000-04-05', '2005-04-05'])
  })
})

describe('solids rules stand apart, each under its own name', () => {
  const PLACES: Record<string, string> = {
    'ma-15-351': 'massachusetts',
    'pima-7-21-050': 'pima-county',
    'phs-table': 'public-health-service',
    pct25: 'practice',
  }
  const known = solids.rules.filter((it) => it.id in PLACES)
  test('four published rules are checked', () => expect(known).toHaveLength(4))
  test.each(known)('$name', ({ id, anyOf }) => {
    const [rule] = value(PLACES[id]!, 'solids.rules').value
    expect(rule?.anyOf).toEqual(anyOf)
  })
  test('El Dorado County guidance: sludge 12 in, scum 3 in', () => {
    expect(value('el-dorado-county', 'solids.rules').value[0]?.anyOf).toEqual([
      { when: 'distance-at-most', distance: 'sludge-top-to-outlet-bottom', inches: 12 },
      { when: 'distance-at-most', distance: 'scum-bottom-to-outlet-bottom', inches: 3 },
    ])
  })
  test('a county that reaches several has them side by side', () => {
    expect(value('quillback', 'solids.rules').value.map((it) => it.id)).toEqual([
      'public-health-service',
      'quarter-full',
    ])
  })
})

test(`pump-out years: ${pumpOut.source}`, () => {
  const { people, rows } = value('practice', 'solids.pump-out-years').value
  expect({ people, rows }).toEqual({ people: pumpOut.table.people, rows: pumpOut.table.rows })
})
