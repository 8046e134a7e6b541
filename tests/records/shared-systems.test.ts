import { describe, expect, test } from 'vitest'
import { plainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { statedValue } from '../../src/records/claim.ts'
import { asBuiltOn } from '../../src/records/fold.ts'
import type { Share } from '../../src/records/system.ts'
import { filed } from './permits.ts'

const today = must(plainDate('2026-10-01'))
const house = (id: string, number: string, bedrooms: number, more: object[] = []) =>
  filed(id, {
    number,
    kind: 'new',
    issuedOn: '1974-05-03',
    approvedOn: '1974-07-19',
    bedrooms,
    components: [{ tag: 'tank', kind: 'tank', capacity: '1,000 gal' }, ...(more as [])],
  })
const lot12 = house('p12', '74-1', 3, [{ tag: 'bed', kind: 'bed', length: '40 ft', width: '20 ft' }])
const lot13 = house('p13', '74-2', 2)
const share = (parcel: string, permits: readonly string[], bedrooms: number | null = null): Share => ({
  parcel,
  permits,
  bedrooms,
  designFlowGpd: null,
})
const both = [share('12', ['p12']), share('13', ['p13'])]

describe('the as-built of a system that serves two parcels', () => {
  test('has a tank of each house, though both are called the same', () => {
    const { components, contradictions } = asBuiltOn([lot12, lot13], [], today, both)
    expect(components.map(({ key }) => key)).toEqual(['p12/tank', 'p12/bed', 'p13/tank'])
    expect(contradictions).toEqual([])
    expect(asBuiltOn([lot12, lot13], [], today).contradictions.map(({ gap }) => gap)).toEqual([
      'put-in-twice',
    ])
  })

  test('states no bedrooms of its own, and what each house puts on it', () => {
    const { bedrooms, loads } = asBuiltOn([lot12, lot13], [], today, both)
    expect(bedrooms.state).toBe('silent')
    expect(loads?.map((it) => [it.parcel, statedValue(it.bedrooms)])).toEqual([
      ['12', 3],
      ['13', 2],
    ])
  })

  test('a correction of one house’s permit is of that house', () => {
    const correction = {
      decision: 'd',
      on: today,
      by: 'reviewer',
      permit: 'p13',
      component: null,
      field: 'bedrooms' as const,
      value: 4,
    }
    const { loads } = asBuiltOn([lot12, lot13], [correction], today, both)
    expect(loads?.map((it) => statedValue(it.bedrooms))).toEqual([3, 4])
  })

  test('a repair in one file means the tank of that file', () => {
    const repair = filed('r13', {
      number: '99-1',
      kind: 'repair',
      issuedOn: '1999-05-03',
      approvedOn: '1999-07-19',
      components: [{ tag: 'tank', kind: 'tank', action: 'replace', capacity: '1,250 gal' }],
    })
    const shares = [both[0]!, share('13', ['p13', 'r13'])]
    const { components, contradictions } = asBuiltOn([lot12, lot13, repair], [], today, shares)
    expect(components.map(({ key, standing }) => `${key} ${standing}`)).toEqual([
      'p12/tank in-service',
      'p12/bed in-service',
      'p13/tank replaced',
      'r13/tank in-service',
    ])
    expect(contradictions).toEqual([])
  })
})
