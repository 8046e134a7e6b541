import { expect, test } from 'vitest'
import type { z } from 'zod'
import type { Result } from '../../src/base/result.ts'
import { findingsEntry } from '../../src/reading/entry/findings.ts'
import { permitEntry } from '../../src/reading/entry/permit.ts'
import { readEntry } from '../../src/reading/entry/read-entry.ts'
import type { Outcome } from '../../src/reconcile/outcome.ts'
import { reconcile } from '../../src/reconcile/reconcile.ts'
import { printDate } from '../../src/words/date.ts'
import { reasonWords } from '../../src/words/reasons.ts'
import { VERDICT_WORDS } from '../../src/words/titles.ts'
import { asked, inputOf, outcomesOf, permit } from '../reconcile/asked.ts'

/** Inputs and questions that 0.1.0 answered wrongly or refused, each with its answer now. */

type Permit = Parameters<typeof permit>[0]
type Entry = z.input<typeof permitEntry>
type Row = readonly [what: string, before: string, now: string]

const refusal = (read: Result<unknown, readonly { readonly message: string }[]>): string =>
  read.ok ? 'taken' : read.error.map(({ message }) => message).join('; ')
const typed = (tank: object): string =>
  refusal(readEntry(permitEntry, permit([{ tag: 'tank', kind: 'tank', ...tank }] as never)))
const found = (kind: string, more: object): string =>
  refusal(
    readEntry(findingsEntry, {
      inspectedOn: '2026-05-19',
      components: [{ label: kind, kind, outcome: 'found', ...more }],
    }),
  )
const dated = (issuedOn: string): string => {
  const read = readEntry(permitEntry, permit([], { issuedOn } as Partial<Entry>))
  return read.ok ? printDate(read.value.issuedOn!) : refusal(read)
}
const told = (outcome: Outcome | undefined): string =>
  outcome ? `${VERDICT_WORDS[outcome.verdict].word}: ${reasonWords(outcome)}` : 'not asked'

const reference = { a: 'NW corner', b: 'NE corner', baseline: '40 ft', wall: 'rear' } as const
const day = { number: '92-1', issuedOn: '1992-03-01', approvedOn: '1992-05-01' } as const
const file = (parts: object[], more: object = {}) => permit(parts as Permit, { ...day, ...more })
const at = (place: string, entry: Entry, check: string, facet: string | null = null): string =>
  told(
    reconcile({ ...inputOf([entry], null), county: place }).outcomes.find(
      (it) => it.check === check && (facet === null || it.facet === facet),
    ),
  )
const perc = (rate: string): string =>
  at(
    'public-health-service',
    permit([{ tag: 'bed', kind: 'bed', area: 900 }] as never, {
      issuedOn: '1970-05-01',
      approvedOn: '1970-05-01',
      percRateMpi: rate,
    }),
    'absorption-against-code',
    'when permitted',
  )

const pits = [{ tag: 'pit', kind: 'seepage-pit', diameter: '6 ft', effectiveDepth: '10 ft', count: 3 }]
const lane = { tag: 'trench', kind: 'trench', length: '80 ft', width: '3 ft' }

const ROWS: readonly Row[] = [
  ...['two 500 gal', '2 500 gal', 'one 500 gal', 'three 500 gal'].map(
    (capacity): Row => [`a tank of “${capacity}”`, 'stored as 2,500 gal, and the like', typed({ capacity })],
  ),
  ['a tank of “0 gal”', 'taken', typed({ capacity: '0 gal' })],
  ['a tank of “±1000 gal”', 'taken', typed({ capacity: '±1000 gal' })],
  ['a liquid depth of “84 ft”', 'taken', found('tank', { liquidDepth: '84 ft' })],
  ['an inside length of “9,999 ft”', 'taken', found('tank', { length: '9,999 ft' })],
  [
    'sludge 60 in deep in 4 ft of liquid',
    'taken',
    found('tank', { liquidDepth: '4 ft', sludgeDepth: '60 in' }),
  ],
  ...["Sept. '77", '9/77', '1977', 'May 9,1977', '1977/05/09'].map(
    (text): Row => [`a permit issued “${text}”`, 'refused', dated(text)],
  ),
  [
    'a perc rate of “30” and “3” bedrooms, as text',
    'refused',
    refusal(readEntry(permitEntry, permit([], { percRateMpi: '30', bedrooms: '3' } as Partial<Entry>))),
  ],
  ['a key “capcity” in a tank', '201, and lost', typed({ capcity: '1,000 gal' })],
  [
    'a permit’s area of three pits, 6 ft across and 10 ft deep',
    '84.8 sq ft by its floor',
    told(outcomesOf(asked([file([{ ...pits[0], area: 565 }])], []), 'stated-area')[0]),
  ],
  [
    '900 sq ft on the card and no dimensions, 3 bedrooms at 1 min/in',
    'cannot tell; at 1 min/in 100 sq ft a bedroom',
    perc('1'),
  ],
  ['the same at 35 min/in', 'cannot tell; at 35 min/in 330 sq ft a bedroom', perc('35')],
  [
    'an 80 ft trench tied once, 110 ft from the well',
    'meets it: 110 ft ± 5',
    told(
      outcomesOf(
        asked(
          [
            file(
              [
                { ...lane, tie: { a: '40 ft', b: '40 ft', side: 'away' } },
                { tag: 'well', kind: 'well', tie: { a: '146 ft', b: '146 ft', side: 'away' } },
              ],
              { reference },
            ),
          ],
          [],
        ),
        'setback',
      )[0],
    ),
  ],
  [
    'a tank 9 ft from the lot line on the permit, where 10 are required',
    'no field for it',
    told(
      outcomesOf(
        asked(
          [
            file([{ tag: 'tank', kind: 'tank', toPropertyLine: '9 ft' }], {
              issuedOn: '2006-03-01',
              approvedOn: '2006-05-01',
            }),
          ],
          [],
        ),
        'kept-distances',
      )[0],
    ),
  ],
  [
    'a tank of 1985 in Ohio, 1,500 gal for 3 bedrooms',
    'not yet in force',
    at(
      'ohio',
      permit([{ tag: 'tank', kind: 'tank', capacity: '1,500 gal' }] as never, {
        issuedOn: '1985-06-01',
        approvedOn: '1985-07-01',
      }),
      'capacity-against-code',
    ),
  ],
  [
    'a tank in Tennessee, whose pack names no conventions',
    'cannot tell',
    at(
      'tennessee',
      permit([{ tag: 'tank', kind: 'tank', capacity: '1,000 gal' }] as never, {
        issuedOn: '2015-06-01',
        approvedOn: '2015-07-01',
      }),
      'capacity-against-code',
    ),
  ],
  [
    'a repair that installs a second bed and says nothing of the first',
    'the areas summed',
    told(
      outcomesOf(
        asked(
          [
            file([{ tag: 'bed', kind: 'bed', length: '30 ft', width: '12 ft' }], { percRateMpi: '12' }),
            permit([{ tag: 'new bed', kind: 'bed', length: '20 ft', width: '12 ft' }] as never, {
              number: '99-7',
              kind: 'repair',
              issuedOn: '1999-03-01',
              approvedOn: '1999-05-01',
            }),
          ],
          [],
        ),
        'absorption-against-code',
      )[0],
    ),
  ],
]

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ')

const PAGE = `# What 0.1.0 answered wrongly, and the answer now

Each was reproduced on that release. This page is made by a test (\`npm test -- tests/corpus/answers-page.test.ts -u\`), from the
service's own words. Whole parcels are in [stories](stories.md); the sources in [sources](sources.md).

| asked | 0.1.0 | now |
| --- | --- | --- |
${ROWS.map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n')}

## Drawn cases

| what | 0.1.0 | now | how it was drawn |
| --- | --- | --- | --- |
| the ground of two ties holds the place, baseline 12.2 ft, ties 106.2 and 116.8 ft | 0.84 | 0.95 | \`npm test -- tests/geometry/position/region.test.ts\`: 18 geometries, 2,000 draws each, 0.95 ± 0.01 in all |
| the same, ties 179.5 and 191.5 ft | 0.44 | 0.96 | the same |
| one place is called elsewhere | up to 1 in 5 | 1 in 20 | \`npm test -- tests/geometry/position/same-place.test.ts\`: 4,000 draws for each geometry |
| of four ties one is a foot off, and a right one is blamed | 17 % | 0.3 % | \`npm test -- tests/geometry/position/locate.test.ts\`: 2,000 draws; in 56 % the answer is "one of these two" |
| the uncertainty of a fix turned by two corners' fixes, against drawn ones | not asked | within 5 % | \`npm test -- tests/geometry/position/anchored.test.ts\`: 4,000 draws |
`

test('the page of answers says what is answered', async () => {
  await expect(PAGE).toMatchFileSnapshot('../../docs/answers.md')
})

test('nothing on it is an input that was taken as it should not be', () => {
  for (const [what, before, now] of ROWS) if (before === 'taken') expect(now, what).not.toBe('taken')
})
