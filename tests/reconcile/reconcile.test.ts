import { describe, expect, test } from 'vitest'
import { SEVERITIES } from '../../src/reconcile/kinds.ts'
import { reconcile } from '../../src/reconcile/reconcile.ts'
import { discrepancyWords } from '../../src/words/follow-up.ts'
import { parcelOfTwelve } from '../bench/parcel-of-twelve.ts'
import { asked, book, inputOf, kindsOf, permit } from './asked.ts'

describe('a reconciliation', () => {
  test('gives the same bytes from the same input, whatever the order the permits came in', () => {
    const input = { ...parcelOfTwelve, book }
    expect(JSON.stringify(reconcile(input))).toBe(JSON.stringify(reconcile(structuredCloneOf(input))))
    const two = inputOf([permit([], { number: '90-1' }), permit([{ tag: 't', kind: 'tank' }])], null)
    expect(JSON.stringify(reconcile({ ...two, permits: two.permits.toReversed() }))).toBe(
      JSON.stringify(reconcile(two)),
    )
  })

  test('lists the worst first and has a sentence for each audience', () => {
    const { discrepancies } = reconcile({ ...parcelOfTwelve, book })
    const ranks = discrepancies.map(({ severity }) => SEVERITIES.indexOf(severity))
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
    for (const it of discrepancies)
      for (const audience of ['firm', 'reviewer'] as const)
        expect(discrepancyWords(it, audience)).toMatch(/^[A-Z0-9].*[.!?]$/s)
  })

  test('no two discrepancies share a key', () => {
    const keys = reconcile({ ...parcelOfTwelve, book }).discrepancies.map(({ key }) => key)
    expect(new Set(keys).size).toBe(keys.length)
  })

  test('every outcome that decides by a number shows its steps and its exhibits', () => {
    const { outcomes } = reconcile({ ...parcelOfTwelve, book })
    for (const { check, verdict, exhibits, steps } of outcomes) {
      if (
        ![
          'capacity-against-record',
          'capacity-against-code',
          'position',
          'absorption-against-code',
          'level',
          'solids',
        ].includes(check)
      )
        continue
      if (!['agrees', 'differs', 'suffices', 'falls-short'].includes(verdict)) continue
      expect(exhibits.length, check).toBeGreaterThan(0)
      expect(steps.length, check).toBeGreaterThan(0)
    }
  })

  test('a permit with no final approval is on file and shows nothing', () => {
    const answer = asked([permit([{ tag: 'tank 1', kind: 'tank' }], { approvedOn: null })], [])
    expect(kindsOf(answer)).toEqual(['record-unclear'])
  })

  test('a finding that names nothing goes to the only one of its kind left, and never by guess to one of two', () => {
    const one = permit([{ tag: 'pit 1', kind: 'seepage-pit' }])
    const loose = { label: 'the pit', kind: 'seepage-pit', outcome: 'found' } as never
    expect(kindsOf(asked([one], [loose]))).toEqual([])
    const two = permit([
      { tag: 'pit 1', kind: 'seepage-pit' },
      { tag: 'pit 2', kind: 'seepage-pit' },
    ])
    expect(kindsOf(asked([two], [loose]))).toEqual(['component-not-on-record'])
  })
})

function structuredCloneOf<T extends { book: unknown }>({ book: rules, ...rest }: T): T {
  return { ...structuredClone(rest), book: rules } as T
}
