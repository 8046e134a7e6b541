import { describe, expect, test } from 'vitest'
import { findingsEntry } from '../../../src/reading/entry/findings.ts'
import { permitEntry } from '../../../src/reading/entry/permit.ts'
import { readEntry } from '../../../src/reading/entry/read-entry.ts'
import { findingsAsWritten, permitAsWritten } from '../../../src/reading/entry/written.ts'

const permit = (fields: object, part: object = {}) =>
  readEntry(permitEntry, {
    number: '1',
    kind: 'new',
    ...fields,
    components: [{ tag: 'tank', kind: 'tank', ...part }],
  })
const findings = (part: object) =>
  readEntry(findingsEntry, {
    inspectedOn: '2026-10-12',
    components: [{ label: 'tank', kind: 'tank', outcome: 'found', ...part }],
  })
const faults = (read: ReturnType<typeof permit> | ReturnType<typeof findings>) =>
  read.ok ? [] : read.error.map(({ pointer, message }) => `${pointer}: ${message}`)

describe('a reading beyond what is usual is asked about', () => {
  test.each([
    [
      { length: '84 ft' },
      '/components/0/length: 84 ft? Did you mean 84 in? If 84 ft is right, write "84 ft, checked"',
    ],
    [{ length: `84'-0"` }, `Did you mean 84 in?`],
    [{ width: '60 ft' }, 'Did you mean 60 in?'],
    [{ length: '7 in' }, 'Did you mean 7 ft?'],
    [{ length: { ft: 84 } }, 'Did you mean 84 in?'],
    [{ length: '9999 ft', width: '9999 ft', liquidDepth: '99 ft' }, '9999 ft? Usual is 2 to 30 ft.'],
    [{ capacity: '30,000 gal' }, '30,000 gal? Usual is 100 to 20,000 gal.'],
    [{ capacity: '0 gal' }, '0 gal is no size: leave it out where it is not known'],
    [{ length: '0 in' }, '0 in is no size'],
    [{ tie: { a: '2000 ft', b: '30 ft' } }, '/components/0/tie/a: 2000 ft? Did you mean 2000 in?'],
  ])('%j', (part, says) => {
    const all = faults(permit({ reference: { a: 'left', b: 'right' } }, part))
    expect(
      all.some((fault) => fault.includes(says)),
      all.join('; '),
    ).toBe(true)
  })

  test('what is usual hangs on the kind: 84 ft is no tank, and a trench', () => {
    expect(faults(permit({}, { kind: 'trench', length: '84 ft' }))).toEqual([])
  })

  test('nothing is asked back in the very words that were written', () => {
    const [asked] = faults(findings({ inletAboveOutlet: { below: '5 in' } }))
    expect(asked).toContain('5 in? ')
    expect(asked).not.toContain('Did you mean 5 in?')
  })

  test('numbers too, as figures and as text', () => {
    expect(faults(permit({ bedrooms: 30 }))[0]).toContain(
      '30? Usual is 1 to 8. If 30 is right, write "30, checked"',
    )
    expect(faults(permit({ percRateMpi: '500' }))[0]).toContain('500? Usual is 0.5 to 240 min/in.')
  })

  test('sludge is not deeper than the liquid', () => {
    const read = findings({ liquidDepth: '48 in', sludgeDepth: '60 in' })
    expect(faults(read)[0]).toContain(
      '/components/0/sludgeDepth: the sludge, 60 in, is deeper than the liquid, 48 in',
    )
    expect(faults(findings({ liquidDepth: '48 in', sludgeDepth: '49 in' }))).toEqual([])
    expect(
      faults(findings({ liquidDepth: '48 in', sludgeDepth: '60 in', levelAboveOutlet: { above: '12 in' } })),
    ).toEqual([])
    expect(faults(findings({ liquidDepth: '48 in', sludgeDepth: '60 in, checked' }))).toEqual([])
  })
})

describe('and taken once a person says that it is meant', () => {
  test.each([
    [
      'scum',
      { liquidDepth: '48 in', scumThickness: '60 in' },
      'scumThickness: the scum, 60 in, is deeper than the liquid, 48 in',
    ],
    [
      'the bottom of the scum',
      { liquidDepth: '48 in', scumBottomBelow: '55 in' },
      'scumBottomBelow: the bottom of the scum, 55 in',
    ],
    [
      'an outlet device',
      { liquidDepth: '36 in', outletDeviceBelow: '48 in' },
      'outletDeviceBelow: the bottom of the outlet device, 48 in',
    ],
    [
      'an inlet device',
      { liquidDepth: '36 in', inletDeviceBelow: '48 in' },
      'inletDeviceBelow: the bottom of the inlet device, 48 in',
    ],
    [
      'an outlet device over the cover',
      { freeboard: '9 in', outletDeviceAbove: '14 in' },
      'outletDeviceAbove: the top of the outlet device, 14 in, is higher than the air over the outlet, 9 in',
    ],
  ])('%s that reaches out of its vessel is asked about', (_, more, says) => {
    const [fault, ...others] = faults(findings(more))
    expect(others).toEqual([])
    expect(fault).toContain(`/components/0/${says}`)
    const [field = '', value = ''] = Object.entries(more).at(-1)!
    expect(faults(findings({ ...more, [field]: `${value}, checked` }))).toEqual([])
  })

  test('what both readings are uncertain by is no reason to ask, nor is liquid over the outlet', () => {
    expect(faults(findings({ liquidDepth: '48 in', outletDeviceBelow: '48 1/4 in' }))).toEqual([])
    expect(
      faults(
        findings({ liquidDepth: '48 in', levelAboveOutlet: { above: '8 in' }, scumBottomBelow: '55 in' }),
      ),
    ).toEqual([])
  })

  test.each(['84 ft, checked', '84 ft checked', '84 ft (Checked)', { ft: 84, checked: true }])(
    '%j',
    (length) => {
      const read = permit({}, { length })
      expect(read).toMatchObject({
        ok: true,
        value: { components: [{ length: { ft: 84, asWritten: '84 ft, checked' } }] },
      })
    },
  )
  test('but what cannot be stays refused, and is not asked about', () => {
    expect(faults(permit({}, { length: '0 in' }))).toHaveLength(1)
    expect(faults(permit({}, { capacity: '0 gal, checked' }))).not.toEqual([])
    expect(faults(permit({ bedrooms: '51, checked' }))).not.toEqual([])
  })
  test('read back, it can be sent again', () => {
    const record = permit({ bedrooms: '12, checked' }, { length: '84 ft, checked' })
    if (!record.ok) throw new Error('refused')
    expect(permitAsWritten(record.value)).toMatchObject({
      bedrooms: '12, checked',
      components: [{ length: '84 ft, checked' }],
    })
    expect(readEntry(permitEntry, permitAsWritten(record.value))).toEqual(record)
    const found = findings({
      length: { length: '84 ft, checked', method: 'wheel' },
      levelAboveOutlet: { below: '9 ft, checked' },
    })
    if (!found.ok) throw new Error('refused')
    expect(readEntry(findingsEntry, findingsAsWritten(found.value))).toEqual(found)
  })
})

describe('numbers as people type them', () => {
  test.each([
    [{ bedrooms: '3' }, { bedrooms: 3 }],
    [{ bedrooms: 'three' }, { bedrooms: 3 }],
    [{ bedrooms: '3 BR' }, { bedrooms: 3 }],
    [{ percRateMpi: '30' }, { percRateMpi: 30 }],
    [{ percRateMpi: '30 min/in' }, { percRateMpi: 30 }],
    [{ percRateMpi: '1 in in 30 min' }, { percRateMpi: 30 }],
    [{ designFlowGpd: '450 gpd' }, { designFlowGpd: 450 }],
    [{ designFlowGpd: '1,200' }, { designFlowGpd: 1200 }],
  ])('%j', (typed, held) => expect(permit(typed)).toMatchObject({ ok: true, value: held }))
  test.each([
    [{ bedrooms: 'a few' }, 'write a whole number, as in 3 or three'],
    [{ bedrooms: '2.5' }, 'not a whole number'],
    [{ bedrooms: 2.5 }, 'a whole number'],
    [{ percRateMpi: 'fast' }, 'write it like 20 min/in'],
    [{ percRateMpi: '0' }, 'more than zero'],
    [{ bedrooms: true }, 'a number'],
  ])('%j is refused', (typed, says) => expect(faults(permit(typed)).join()).toContain(says))
})
