import { describe, expect, test } from 'vitest'
import { reconcile } from '../../../src/reconcile/reconcile.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { inputOf, permit } from '../asked.ts'

type Found = NonNullable<Parameters<typeof inputOf>[1]>['components']

/** A tank of that day with these readings, by the law of a state. */
function told(state: string, issuedOn: string, read: object) {
  const file = permit([{ tag: 'tank', kind: 'tank', capacity: '1000 gal' }], {
    issuedOn,
    approvedOn: issuedOn,
  })
  const components = [
    { key: '88-1/tank', label: 'tank', kind: 'tank', outcome: 'found', material: 'concrete', ...read },
  ] as Found
  const { discrepancies, outcomes } = reconcile({ ...inputOf([file], { components }), county: state })
  const own = (check: string) => ['tank-construction', 'compartments', 'accepted-type'].includes(check)
  return {
    raised: discrepancies
      .filter(({ outcome }) => own(outcome.check))
      .map(({ severity, outcome }) => `${severity} ${outcome.facet}`),
    says: outcomes.filter(({ check }) => own(check)).map(reasonWords),
  }
}
const rule = (length: string) => ({ length, method: 'rigid-rule' })

describe('a tank against the law of its place and day', () => {
  test('an outlet tee that is too short, and too little air, are looked at where the code of the day asked for more', () => {
    const { raised, says } = told('ohio', '2010-05-01', {
      outletDeviceBelow: rule('12 in'),
      freeboard: rule('9 in'),
      outletDeviceAbove: rule('7 in'),
    })
    expect(raised).toEqual(['review freeboard | when permitted', 'review outlet-below | when permitted'])
    expect(says.join('; ')).toContain('the code when it was permitted required at least 1')
  })

  test('half an inch short by a reading that is good to half an inch is not called short', () => {
    const { raised, says } = told('ohio', '2010-05-01', {
      outletDeviceBelow: { length: '17.7 in', method: 'by-eye' },
    })
    expect(raised).toEqual([])
    expect(says.join()).toContain('too close to call')
  })

  test('a tank of 1970 is told today’s law and asked for nothing', () => {
    expect(
      told('winnow', '1970-05-01', { liquidDepth: rule('48 in'), outletDeviceBelow: rule('6 in') }).raised,
    ).toEqual(['note outlet-share | today'])
  })

  test('a lying cylinder has a band of its own, and freeboard is what is left over the liquid', () => {
    const lying = {
      shape: 'horizontal-cylinder',
      liquidDepth: rule('40 in'),
      outletDeviceBelow: rule('15.4 in'),
    }
    expect(told('winnow', '1985-05-01', lying).raised).toContain('review outlet-share | when permitted')
    expect(told('winnow', '1985-05-01', { ...lying, shape: 'rectangular' }).raised).not.toContain(
      'review outlet-share | when permitted',
    )
    expect(
      told('ohio', '2010-05-01', { liquidDepth: rule('48 in'), insideHeight: rule('54 in') }).raised,
    ).toEqual(['review freeboard | when permitted'])
  })

  test('an inlet below the outlet, a thin wall, a wall of block', () => {
    expect(
      told('ohio', '2010-05-01', { inletAboveOutlet: { below: '1 in', method: 'rigid-rule' } }).raised,
    ).toEqual(['review invert-drop | when permitted'])
    expect(told('pennsylvania', '2001-05-01', { wallThickness: rule('1.5 in') }).raised).toContain(
      'review wall | when permitted',
    )
    expect(
      told('pennsylvania', '2001-05-01', { wallThickness: rule('1.5 in'), material: 'steel' }).raised,
    ).toEqual([])
    expect(told('pennsylvania', '1960-05-01', { material: 'brick' }).raised).toEqual(['note today'])
  })

  test('two compartments of which the first is a third of the length', () => {
    const two = { compartments: 2, length: rule('9 ft'), firstCompartmentLength: rule('3 ft') }
    expect(told('winnow', '1995-05-01', two).raised).toContain('review compartments | when permitted')
    expect(told('winnow', '1995-05-01', { ...two, firstCompartmentLength: rule('6 ft') }).raised).toEqual([])
  })
})
