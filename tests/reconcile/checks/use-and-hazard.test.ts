import { describe, expect, test } from 'vitest'
import { reconcile } from '../../../src/reconcile/reconcile.ts'
import { statusOf } from '../../../src/reconcile/status.ts'
import { asked, inputOf, permit } from '../asked.ts'

type Findings = NonNullable<Parameters<typeof inputOf>[1]>
type Found = NonNullable<Findings['components']>[number]

const tank = (more: Partial<Found> = {}): Found => ({
  key: '88-1/tank',
  label: 'tank',
  kind: 'tank',
  outcome: 'found',
  opened: 'cover-off',
  levelAboveOutlet: { above: '0 in' },
  ...more,
})
const file = permit([
  { tag: 'tank', kind: 'tank', capacity: '1000 gal' },
  { tag: 'box', kind: 'distribution-box' },
])
const raised = (components: readonly Found[], more: Partial<Findings> = {}, own = file) =>
  asked([own], components, { ground: 'dry', ...more })
    .discrepancies.filter(({ kind, severity }) => kind !== 'inspection-incomplete' && severity !== 'note')
    .map(({ severity, act, kind }) => `${severity} ${kind} ${act}`)

describe('what can kill comes before what the record says', () => {
  test('a top that a probe goes through, a cover that is gone, wires that lie bare', () => {
    expect(raised([tank({ topGivesWay: true })])).toEqual(['action condition-poor keep-off'])
    expect(raised([tank({ coverMissing: true, lidSecured: false })])).toEqual([
      'action condition-poor cover-at-once',
    ])
    const dosed = permit([
      { tag: 'tank', kind: 'tank' },
      { tag: 'pump', kind: 'pump-chamber' },
    ])
    const pump = {
      key: '88-1/pump',
      label: 'pump',
      kind: 'pump-chamber',
      outcome: 'found',
      wiringCovered: false,
    } as const
    expect(raised([tank(), pump], {}, dosed)).toEqual(['action equipment-failed cover-wiring'])
  })

  test('what was seen to hold raises nothing', () => {
    expect(raised([tank({ topGivesWay: false, coverMissing: false, lidSecured: true })])).toEqual([])
  })
})

describe('loads', () => {
  test('a meter that reads more than the design flow, and one that does not', () => {
    expect(raised([tank()], { waterUseGpd: 700 })).toEqual(['review load-above-design remove-load'])
    expect(raised([tank()], { waterUseGpd: 300 })).toEqual([])
  })

  test('a sump in the system, cars over the field', () => {
    expect(raised([tank()], { clearWater: true, vehiclesOver: true, rootsIn: false })).toEqual([
      'review load-above-design remove-load',
      'review field-burdened clear-field',
    ])
  })
})

test('a box that a test raises over its outlet is high, and not before its volume is known', () => {
  const box = { key: '88-1/box', label: 'box', kind: 'distribution-box', outcome: 'found' } as const
  const loaded = [tank(), { ...box, levelAboveOutlet: { above: '0 in' }, levelAfterTest: { above: '4 in' } }]
  expect(raised(loaded, { testVolume: '150 gal', testMinutes: 30 })).toEqual(['action level-high fix-flow'])
  expect(raised(loaded)).toEqual([])
})

describe('a cesspool by the law of its place', () => {
  const cesspool = permit([{ tag: 'cesspool', kind: 'cesspool' }], {
    issuedOn: '1955-05-01',
    approvedOn: '1955-06-01',
  })
  const told = (county: string) =>
    reconcile({ ...inputOf([cesspool], { ground: 'dry', components: [] }), county })
      .discrepancies.filter(({ kind }) => kind === 'type-not-accepted')
      .map(({ severity, act }) => `${severity} ${act}`)
  test('lawful when built and left until it fails; replaced when the property is sold', () => {
    expect(told('winnow')).toEqual(['note nothing-until-change'])
    expect(told('rhode-island')).toEqual(['action replace-at-transfer'])
    expect(told('new-jersey')).toEqual(['action replace-at-transfer'])
  })
})

test('permits that contradict each other on three things stand once in a status', () => {
  const twin = (number: string, capacity: string, material: 'steel' | 'concrete') => ({
    ...permit([{ tag: 'tank', kind: 'tank', capacity, material }], { bedrooms: number === '88-1' ? 3 : 4 }),
    number,
  })
  const repair = { ...twin('89-2', '900 gal', 'steel'), kind: 'new' as const, approvedOn: '1989-05-01' }
  const { discrepancies } = asked([twin('88-1', '1000 gal', 'concrete'), repair], [])
  const { items } = statusOf({
    hasApprovedPermit: true,
    hasInspection: true,
    decidedBefore: false,
    standing: discrepancies.map((discrepancy) => ({ discrepancy, decided: null })),
  })
  expect(items.filter(({ kind }) => kind === 'record-unclear')).toHaveLength(1)
})

describe('a house that stood empty', () => {
  const incomplete = (more: Partial<Findings>) =>
    asked([file], [tank({ outletDeviceBelow: '14 in' })], { ground: 'dry', ...more })
      .discrepancies.filter(({ key }) => key.includes('load-tested'))
      .map(({ severity, act }) => `${severity} ${act}`)
  const LEFT_OUT = ['review finish-inspection']

  // A month without flow, and a drainfield that fails looks dry: common practice is to run water and look again.
  test('is not vouched for by dry ground: water is run, or the inspection is incomplete', () => {
    expect(incomplete({ occupancy: 'vacant', daysVacant: 200 })).toEqual(LEFT_OUT)
    expect(incomplete({ occupancy: 'vacant' })).toEqual(LEFT_OUT)
    expect(incomplete({ occupancy: 'vacant', daysVacant: 12 })).toEqual([])
    expect(incomplete({ occupancy: 'occupied' })).toEqual([])
    expect(incomplete({ occupancy: 'vacant', daysVacant: 200, testVolume: '150 gal' })).toEqual([])
  })
})

describe('the lines that every house has', () => {
  const line = (label: string): Found => ({ label, kind: 'building-sewer', outcome: 'found' })
  const told = (lines: readonly Found[], own = file) =>
    asked([own], [tank(), ...lines], { ground: 'dry' })
      .discrepancies.filter(({ kind }) => kind === 'component-not-on-record')
      .map(({ severity, outcome }) => `${severity} ${outcome.subject.label}`)

  test('one that an old card does not list is no work without a permit; a second one is told', () => {
    expect(told([line('sewer')])).toEqual([])
    expect(told([line('sewer'), line('second sewer')])).toEqual(['review second sewer'])
    const listed = permit([
      { tag: 'tank', kind: 'tank', capacity: '1000 gal' },
      { tag: 'box', kind: 'distribution-box' },
      { tag: 'sewer', kind: 'building-sewer' },
    ])
    expect(told([{ ...line('sewer'), key: '88-1/sewer' }, line('second sewer')], listed)).toEqual([
      'review second sewer',
    ])
  })
})
