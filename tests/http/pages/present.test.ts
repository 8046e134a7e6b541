import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { loadRuleBook } from '../../../src/files/rule-packs.ts'
import { presentFigures } from '../../../src/http/pages/county-overview/present.ts'
import { bodyOf, faultsOf } from '../../../src/http/pages/decision/read-form.ts'
import { scanCut } from '../../../src/http/pages/parts/scan.ts'
import { type QueueQuery, queueAddress, queueQuery } from '../../../src/http/pages/queue/filter.ts'
import { ageInWords } from '../../../src/http/pages/queue/present.ts'
import { presentLayers, presentPack } from '../../../src/http/pages/rules/present.ts'
import { ruleValue } from '../../../src/http/pages/rules/value-view.ts'
import { cameBy, listTitle, presentFound } from '../../../src/http/pages/search/present.ts'
import { whereTo } from '../../../src/http/pages/sign-in/where-to.ts'
import { dayInWords } from '../../../src/http/pages/words/dates.ts'
import { datesInWords, prose } from '../../../src/http/pages/words/prose.ts'
import { placeOnPermit } from '../../../src/http/pages/words/sources.ts'
import type { ParcelMatch } from '../../../src/store/parcels.ts'

const book = must(await loadRuleBook())

describe('a search leads', () => {
  const match = (number: string, matched: ParcelMatch['matched'], score = 1): ParcelMatch => ({
    parcel: { id: number, number, address: '14 Heron Hollow Rd', retiredOn: null },
    matched,
    says: number,
    score,
  })

  test('straight to the parcel that bears the number, whatever else looks like it', () => {
    const found = presentFound([match('07-0412-0031', 'number'), match('07-0412-0032', 'number-begins')])
    expect(found).toEqual({ to: 'parcel', number: '07-0412-0031', by: 'number' })
  })

  test('straight to the only one there is; a misspelled street is told apart', () => {
    expect(presentFound([match('07-0412-0031', 'address')])).toMatchObject({ to: 'parcel', by: 'address' })
    const misspelled = presentFound([match('07-0412-0031', 'address', 0.8)])
    expect(misspelled).toMatchObject({ to: 'parcel', by: 'address-like' })
  })

  test('never straight to another house of the street, though it be the only one', () => {
    const found = presentFound([match('07-0412-0031', 'street', 0.5)])
    expect(found).toMatchObject({ to: 'list', by: 'street' })
    expect(listTitle('16 Heron Hollow', 'street')).toBe(
      'There is no “16 Heron Hollow”. The nearest addresses:',
    )
    expect(listTitle('Heron Hollow', 'street')).toBe('Parcels that match “Heron Hollow”')
  })

  test('to a list where there are several, as for an old number that was split', () => {
    const found = presentFound([match('07-0412-0031', 'old-number'), match('07-0412-0032', 'old-number')])
    expect(found).toMatchObject({
      to: 'list',
      by: 'old-number',
      hits: [{ because: 'old number 07-0412-0031' }, {}],
    })
  })

  test('to help where there is none', () => expect(presentFound([])).toEqual({ to: 'nothing' }))

  test('and a guess at an address says that it is one', () => {
    expect(cameBy('14 Heron Holow', 'address-like', 'en')).toContain('Make sure it is the one you mean')
    expect(cameBy('07-0412-0031', 'number', 'en')).toBeNull()
    expect(cameBy('x', 'made-up', 'en')).toBeNull()
  })
})

describe('the queue’s address', () => {
  const query = (over: Partial<QueueQuery> = {}): QueueQuery => ({ ...queueQuery.parse({}), ...over })

  test('says all that was asked for and nothing that was not', () => {
    const asked = query({ severity: 'action', since: '2026-01-01' as never })
    expect(queueAddress('/q', asked, { kind: 'level-low' })).toBe(
      '/q?severity=action&kind=level-low&since=2026-01-01',
    )
    expect(queueAddress('/q', query(), {})).toBe('/q')
    expect(queueAddress('/q', asked, { severity: undefined, since: undefined })).toBe('/q')
  })

  test('is read leniently: what a form left empty, or nobody can read, was not asked for', () => {
    const sent = { state: 'everything', severity: '', kind: 'nonsense', since: '2026-02-30', parcel: '  ' }
    expect(queueQuery.parse(sent)).toEqual({
      state: 'to-decide',
      severity: undefined,
      kind: undefined,
      since: undefined,
      parcel: undefined,
      limit: 40,
    })
  })

  test.each([
    [-3, 'today'],
    [0, 'today'],
    [1, '1 day'],
    [59, '59 days'],
    [61, '2 months'],
    [729, '23 months'],
    [800, '2 years'],
  ])('an age of %i days is %s', (days, words) => expect(ageInWords(days)).toBe(words))
})

describe('the form of a decision', () => {
  test('becomes the body that a program would send, without what was left empty', () => {
    expect(bodyOf({ action: 'accept', reason: ' Seen.\r\nTwice. ', asks: '', value: '', field: '' })).toEqual(
      {
        action: 'accept',
        reason: 'Seen.\nTwice.',
      },
    )
  })

  test('passes over what does not belong to the choice', () => {
    const typed = {
      action: 'accept',
      reason: 'Seen.',
      asks: 'nothing',
      permit: 'p',
      field: 'capacity',
      value: '7',
    }
    expect(bodyOf(typed)).toEqual({ action: 'accept', reason: 'Seen.' })
  })

  test.each([
    [{ field: 'capacity', value: '750 gal' }, '750 gal'],
    [{ field: 'bedrooms', value: '4' }, 4],
    [{ field: 'bedrooms', value: 'four' }, 'four'],
    [{ field: 'material', value: 'Cast iron' }, 'cast-iron'],
    [
      { field: 'tie', tieA: '18\'-6"', tieB: '27 ft', tieSide: '' },
      { a: '18\'-6"', b: '27 ft' },
    ],
    [
      { field: 'tie', tieA: '18', tieB: '', tieSide: 'away' },
      { a: '18', b: '', side: 'away' },
    ],
  ])('a correction %j reads as the permit’s own entry would', (typed, value) => {
    const body = bodyOf({
      action: 'correct-record',
      reason: 'Misread.',
      permit: 'p',
      component: 'p/tank',
      ...typed,
    })
    expect(body).toMatchObject({
      correction: { permit: 'p', component: 'p/tank', field: typed.field, value },
    })
  })

  test('each fault goes to its field, in words for a form', () => {
    expect(
      faultsOf([
        { pointer: '/action', message: 'write one of: …' },
        { pointer: '/reason', message: 'say why' },
        { pointer: '/correction/value/a', message: 'write a length' },
        { pointer: '/correction/value', message: 'second' },
        { pointer: '', message: 'something else' },
      ]),
    ).toEqual({
      action: 'Choose a decision.',
      reason: 'Say why.',
      tieA: 'Write a length.',
      value: 'Second.',
      form: 'Something else.',
    })
  })
})

describe('the county overview', () => {
  const [statuses, ages, kinds, decades, decisions] = presentFigures({
    at: new Date(),
    decades: [
      { decade: null, word: null, count: 3 },
      { decade: 1970, word: 'matches', count: 5 },
      { decade: 1970, word: 'action-needed', count: 2 },
      { decade: 1980, word: 'not-inspected', count: 1 },
    ],
    kinds: [
      { kind: 'capacity-below-code', severity: 'review', open: 1, decided: 2 },
      { kind: 'capacity-below-code', severity: 'note', open: 4, decided: 0 },
      { kind: 'level-low', severity: 'action', open: 9, decided: 0 },
    ],
    decisions: [{ action: 'accept', count: 7 }],
    ages: [{ severity: 'action', age: 'over-a-year', count: 2 }],
  })
  const row = (table: typeof statuses, name: string) => table?.rows.find((it) => it.name === name)?.cells

  test('counts every parcel once by status, and once by decade', () => {
    const total = (cells: readonly (readonly number[])[], at: number) =>
      cells.reduce((sum, it) => sum + it[at]!, 0)
    expect(
      total(
        statuses!.rows.map(({ cells }) => cells),
        0,
      ),
    ).toBe(11)
    expect(
      total(
        decades!.rows.map(({ cells }) => cells),
        0,
      ),
    ).toBe(11)
    expect(row(decades, '1970s')).toEqual([7, 5, 2, 0])
    expect(row(decades, 'No approved permit')).toEqual([3, 0, 0, 0])
  })

  test('gathers a kind over its severities, most open first', () => {
    expect(kinds!.rows.map(({ name, cells }) => [name, ...cells])).toEqual([
      ['Level low', 9, 0],
      ['Capacity below code', 5, 2],
    ])
  })

  test('shows every age and every decision, those with none as well', () => {
    expect(row(ages, 'Over a year')).toEqual([2, 0, 0, 2])
    expect(row(ages, 'Under 30 days')).toEqual([0, 0, 0, 0])
    expect(row(decisions, 'Accepted')).toEqual([7])
    expect(row(decisions, 'Repair required')).toEqual([0])
  })
})

describe('the rules', () => {
  test('spans that follow each other are one; the nearest pack comes first', () => {
    const packs = presentLayers(book, 'quillback')
    expect(packs[0]).toMatchObject({ pack: 'quillback/code', invented: true, during: ['always'] })
    const solids = packs.find(({ pack }) => pack === 'public-health-service/solids')
    expect(solids?.during).toEqual(['from Jan 1, 1967'])
    const tanks = packs.find(({ pack }) => pack === 'public-health-service/tanks')
    expect(tanks).toMatchObject({
      during: ['Jan 1, 1967 to Jul 1, 1986'],
      cited: [{ verified: 'from-memory', count: 1 }],
    })
  })

  test.each([...book.packs.values()])('every value of $pack is shown, with how sure it is', (pack) => {
    for (const { entries } of presentPack(pack)) {
      for (const { value, verified } of entries) {
        const shown = ruleValue(value).text
        expect(shown.length).toBeGreaterThan(0)
        expect(shown).not.toMatch(/\[object|undefined|\bnull\b|NaN/)
        expect(['read', 'second-hand', 'from-memory', 'common-practice']).toContain(verified)
      }
    }
  })

  test('a figure of nought stays in a table and is left out of a list of names', () => {
    expect(
      ruleValue([
        { from: 'a', ft: 0 },
        { from: 'b', ft: 5 },
      ]).text,
    ).toContain('<td>0</td>')
    expect(ruleValue({ perBedroomGpd: 150, baseGpd: 0 }).text).not.toContain('base gpd')
  })
})

describe('words', () => {
  test('dates are written out, and what only looks like one is left alone', () => {
    expect(dayInWords('1974-06-07')).toBe('Jun 7, 1974')
    expect(datesInWords('by 2026-10-20, parcel 07-0412-0031, permit 2026-13-45')).toBe(
      'by Oct 20, 2026, parcel 07-0412-0031, permit 2026-13-45',
    )
    expect(prose('the tank is full')).toBe('The tank is full.')
    expect(prose('Is it?')).toBe('Is it?')
  })

  test('a pointer into a permit is a place on it', () => {
    expect(placeOnPermit('/components/2/liquidDepth')).toBe('component 3, liquid depth')
    expect(placeOnPermit('/percRateMpi')).toBe('perc rate')
  })

  test('whoever signs in goes nowhere but here', () => {
    expect(whereTo('/counties/quillback/queue?kind=level-low')).toBe(
      '/counties/quillback/queue?kind=level-low',
    )
    for (const away of ['//x.test', 'https://x.test', '/\\x.test', '/a/..//x.test', '/sign-in', 7, null]) {
      expect(whereTo(away)).toBe('/')
    }
  })
})

describe('the cut of a scan', () => {
  const picture = { path: '/p.png', shape: 1.3 }
  const cut = (box: Parameters<typeof scanCut>[1]) => scanCut(picture, box, '1,250 <gal>').text
  const view = (box: Parameters<typeof scanCut>[1]) =>
    /viewBox="([\d. ]+)"/.exec(cut(box))![1]!.split(' ').map(Number) as [number, number, number, number]

  test.each([
    { x: 0.4, y: 0.5, w: 0.1, h: 0.01 },
    { x: 0, y: 0, w: 0.02, h: 0.01 },
    { x: 0.95, y: 0.98, w: 0.05, h: 0.02 },
    { x: 0.01, y: 0.3, w: 0.98, h: 0.02 },
  ])('shows the box %j with room around it, and nothing beyond the page', (box) => {
    const [left, top, width, height] = view(box)
    expect(Math.min(left, top)).toBeGreaterThanOrEqual(0)
    expect(left + width).toBeLessThanOrEqual(1000.1)
    expect(top + height).toBeLessThanOrEqual(1300.1)
    expect(left).toBeLessThanOrEqual(box.x * 1000 + 0.1)
    expect(left + width).toBeGreaterThanOrEqual((box.x + box.w) * 1000 - 0.1)
    expect(top).toBeLessThanOrEqual(box.y * 1300 + 0.1)
    expect(top + height).toBeGreaterThanOrEqual((box.y + box.h) * 1300 - 0.1)
  })

  test('is the whole page where no box is known, and says what it shows', () => {
    expect(view(null)).toEqual([0, 0, 1000, 1300])
    expect(cut(null)).toContain('aria-label="The scan: 1,250 &lt;gal&gt;"')
  })
})
