import { describe, expect, test } from 'vitest'
import { howOften, probabilityInFigures, readingOf } from '../../../../src/http/pages/patterns/chance.ts'
import { presentPatterns } from '../../../../src/http/pages/patterns/present.ts'
import { patternsView } from '../../../../src/http/pages/patterns/view.ts'
import { pattern } from '../../../../src/operations/patterns/find-patterns.ts'

const county = { id: 'quillback', name: 'Quillback County' }
const view = (...patterns: ReturnType<typeof pattern>[]) =>
  patternsView(county, presentPatterns(county.id, patterns)).text
const group = (name: string | null, hits: number, total: number) => ({ name, hits, total })
const streets = (...groups: ReturnType<typeof group>[]) =>
  pattern('unrecorded-work-by-street', 'Where?', 'Parcels.', groups)

/**
 * R. A. Fisher, The Design of Experiments (1935), chapter 2: eight cups, all four told right, 1 in 70; three of four
 * on either side, 34 in 70 (two-sided; from memory).
 */
const ALL_TOLD = streets(group('tern lane', 4, 4), group(null, 0, 4))
const ON_ONE_STREET = streets(
  group('tern lane', 30, 30),
  group('heron road', 2, 40),
  group('weir street', 3, 50),
)

describe('a probability in words', () => {
  test.each([
    [2 / 70, '0.029', '3 times in 100'],
    [34 / 70, '0.49', '49 times in 100'],
    [1 / 1716, '0.00058', '6 times in 10,000'],
    [0.0001, '0.00010', 'once in 10,000'],
    [0.0099, '0.0099', 'once in 100'],
    [0.00004, 'under 0.0001', 'less than once in 10,000 times'],
    [0.996, '1', 'nearly always'],
    [1, '1', 'nearly always'],
  ])('%f: %s, %s', (p, figures, often) => {
    expect([probabilityInFigures(p), howOften(p)]).toEqual([figures, often])
  })
})

describe('what a group may be read as', () => {
  const row = { group: 'x', hits: 6, total: 6, elsewhereHits: 0, elsewhereTotal: 7, probability: 0.001 }

  test('goes by the probability that allows for how many groups there are, not by its own', () => {
    expect(readingOf({ ...row, adjusted: 0.049 })).toBe('more')
    expect(readingOf({ ...row, adjusted: 0.05 })).toBe('chance-can')
  })

  test('tells fewer from more by the shares, not by the bare counts', () => {
    expect(
      readingOf({ ...row, hits: 6, total: 60, elsewhereHits: 5, elsewhereTotal: 10, adjusted: 0.01 }),
    ).toBe('fewer')
  })

  test('says nothing of a group that is all there is', () => {
    expect(readingOf({ ...row, elsewhereTotal: 0, adjusted: 0 })).toBe('nothing-to-compare')
  })
})

describe('the page', () => {
  test('shows the counts, the exact test and what it comes to with all groups looked at', () => {
    const page = view(ON_ONE_STREET)
    expect(page).toContain('30 of 30')
    expect(page).toContain('5 of 90')
    expect(page).toMatch(/Tern Lane.*More than elsewhere; worth a look\..*By chance: less than once/)
    expect(page).toMatch(/Heron Road.*Fewer than elsewhere; worth a look/)
    expect(page).toContain('The numbers are small')
    expect(page).toContain('Fisher’s exact test')
    expect(page).toContain('Holm’s method')
  })

  test('leads from a street to its parcels, and to what is counted in the queue', () => {
    const page = view(ON_ONE_STREET)
    expect(page).toContain('href="/counties/quillback/search?q=tern%20lane"')
    expect(page).toContain('href="/counties/quillback/queue?kind=line-replaced-without-permit"')
  })

  test('says each caution of the operation once', () => {
    const page = view(ON_ONE_STREET, ALL_TOLD)
    for (const caution of ON_ONE_STREET.cautions) expect(page.split(caution)).toHaveLength(2)
  })

  test('shows no group that is too small, and how many there are', () => {
    const page = view(streets(group('short street', 4, 4), group('heron road', 0, 9)))
    expect(page).not.toMatch(/short street/i)
    expect(page).toContain('1 street with fewer than 5 inspected parcels, or without a name, is not shown')
  })

  test('has no table where every group is too small', () => {
    const page = view(ALL_TOLD)
    expect(page).not.toContain('<table')
    expect(page).toContain('No group is large enough')
    expect(page).toContain('2 streets with fewer than 5')
  })

  test('says of the only group that there is nothing to hold it against', () => {
    expect(view(streets(group('tern lane', 3, 9)))).toContain('Nothing to compare with.')
  })

  test('says of an empty county that it is', () => {
    const page = view(streets(), pattern('misreads-by-form', 'Where?', 'Values.', []))
    expect(page).toContain('Nothing to compare yet')
    expect(page).not.toContain('<table')
  })

  test('escapes the name that a form was given', () => {
    const page = view(pattern('misreads-by-form', '', '', [group('<b>1986</b>', 1, 9), group('b', 1, 9)]))
    expect(page).toContain('&lt;b&gt;1986&lt;/b&gt;')
  })
})
