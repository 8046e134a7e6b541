import { describe, expect, test } from 'vitest'
import { plainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { findingsEntry } from '../../src/reading/entry/findings.ts'
import { layOut } from '../../src/reconcile/case.ts'
import { pair } from '../../src/reconcile/pairing.ts'
import { asBuiltOn } from '../../src/records/fold.ts'
import { filed } from '../records/permits.ts'
import { type asked, inputOf, permit } from './asked.ts'

const file = [
  filed('p1', {
    number: '58-1',
    kind: 'new',
    approvedOn: '1958-06-10',
    components: [
      { tag: 'tank', kind: 'tank' },
      { tag: 'pit 1', kind: 'seepage-pit' },
      { tag: 'pit 2', kind: 'seepage-pit' },
      { tag: 'cesspool', kind: 'cesspool' },
    ],
  }),
  filed('p2', {
    number: '85-2',
    kind: 'repair',
    approvedOn: '1985-06-03',
    components: [
      { tag: 'tank', kind: 'tank', action: 'replace' },
      { tag: 'cesspool', kind: 'cesspool', action: 'abandon' },
    ],
  }),
]
const asBuilt = asBuiltOn(file, [], must(plainDate('2026-01-01')))

type Found = {
  readonly label: string
  readonly kind: 'tank' | 'seepage-pit' | 'cesspool'
  readonly key?: string
}
function paired(...components: Found[]) {
  const record = findingsEntry.parse({
    inspectedOn: '2025-06-01',
    components: components.map((found) => ({ ...found, outcome: 'found' })),
  })
  const { pairings, former, unrecorded } = pair(asBuilt, record)
  return {
    pairs: Object.fromEntries(
      pairings.flatMap(({ built, found }) => (found ? [[built.key, found.label]] : [])),
    ),
    former: former.map(({ built, found }) => [built.key, found.label]),
    unrecorded: unrecorded.map(({ label }) => label),
  }
}

describe('what was found is taken for what is on record', () => {
  test('by the name the inspector chose', () => {
    expect(paired({ label: 'near pit', kind: 'seepage-pit', key: 'p1/pit 2' }).pairs).toEqual({
      'p1/pit 2': 'near pit',
    })
  })

  test('by what has since taken the place of the one named', () => {
    expect(paired({ label: 'tank', kind: 'tank', key: 'p1/tank' })).toEqual({
      pairs: { 'p2/tank': 'tank' },
      former: [],
      unrecorded: [],
    })
  })

  test('an old one beside its successor is a former one, whichever is told first', () => {
    const [old, current] = [
      { label: 'old tank', kind: 'tank', key: 'p1/tank' },
      { label: 'tank', kind: 'tank', key: 'p2/tank' },
    ] as const
    const answer = { pairs: { 'p2/tank': 'tank' }, former: [['p1/tank', 'old tank']], unrecorded: [] }
    expect(paired(old, current)).toEqual(answer)
    expect(paired(current, old)).toEqual(answer)
  })

  test('an abandoned one is never taken for another of its kind', () => {
    expect(paired({ label: 'filled pool', kind: 'cesspool', key: 'p1/cesspool' })).toEqual({
      pairs: {},
      former: [['p1/cesspool', 'filled pool']],
      unrecorded: [],
    })
  })

  test('by being the only one of its kind on both sides, and never by guess', () => {
    expect(paired({ label: 'a tank', kind: 'tank' }).pairs).toEqual({ 'p2/tank': 'a tank' })
    expect(paired({ label: 'a pit', kind: 'seepage-pit' }).unrecorded).toEqual(['a pit'])
    expect(paired({ label: 'a tank', kind: 'tank' }, { label: 'another', kind: 'tank' }).unrecorded).toEqual([
      'a tank',
      'another',
    ])
  })

  test('a key that is on no paper is no name', () => {
    expect(paired({ label: 'pit', kind: 'seepage-pit', key: 'p9/pit' }).unrecorded).toEqual(['pit'])
  })
})

describe('without a key', () => {
  const pits = [
    { tag: 'pit A', kind: 'seepage-pit', tie: { a: '40 ft', b: '50 ft', side: 'away' } },
    { tag: 'pit B', kind: 'seepage-pit', tie: { a: '70 ft', b: '60 ft', side: 'away' } },
  ] as const
  const reference = { a: 'rear left corner', b: 'rear right corner', baseline: '36 ft' }
  const pairedBy = (components: Parameters<typeof asked>[1]) => {
    const input = inputOf([permit([...pits] as never, { reference })], {
      reference,
      components: [...components],
    })
    const { pairings, unrecorded } = layOut(input)
    return { by: pairings.map(({ by }) => by), unrecorded: unrecorded.length }
  }
  test('labels tell two of a kind apart, however they are written', () => {
    expect(
      pairedBy([
        { label: 'Pit-B', kind: 'seepage-pit', outcome: 'found' },
        { label: 'pit a', kind: 'seepage-pit', outcome: 'found' },
      ]),
    ).toEqual({ by: ['label', 'label'], unrecorded: 0 })
  })
  test('so does the place where they lie', () => {
    expect(
      pairedBy([
        { label: 'near one', kind: 'seepage-pit', outcome: 'found', tie: { a: `40'-6"`, b: '49 ft' } },
        { label: 'far one', kind: 'seepage-pit', outcome: 'found', tie: { a: '71 ft', b: '60 ft' } },
      ]),
    ).toEqual({ by: ['position', 'position'], unrecorded: 0 })
  })
  test('and where neither does, nothing is paired by guess', () => {
    expect(
      pairedBy([
        { label: 'one', kind: 'seepage-pit', outcome: 'found' },
        { label: 'two', kind: 'seepage-pit', outcome: 'found' },
      ]),
    ).toEqual({ by: [null, null], unrecorded: 2 })
  })
})
