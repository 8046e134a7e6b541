import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { NOT_REACHED_REASONS, SEARCH_METHODS } from '../../../src/catalog/choices.ts'
import { itemOf } from '../../../src/reconcile/status.ts'
import { itemWords } from '../../../src/words/agent/status.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, kindsOf, outcomesOf, permit } from '../asked.ts'

const BAFFLE = permit([{ tag: 'outlet baffle', kind: 'outlet-baffle' }])
const baffle = (more: object) =>
  ({ key: '88-1/outlet baffle', label: 'outlet baffle', kind: 'outlet-baffle', ...more }) as never

describe('absence of evidence is no evidence', () => {
  test('not reached, for whatever reason, never becomes missing', () => {
    fc.assert(
      fc.property(fc.constantFrom(...NOT_REACHED_REASONS), (notReachedBecause) => {
        const answer = asked([BAFFLE], [baffle({ outcome: 'not-reached', notReachedBecause })])
        expect(kindsOf(answer)).not.toContain('component-missing')
        expect(outcomesOf(answer, 'component-presence')[0]).toMatchObject({ verdict: 'cannot-tell' })
      }),
    )
  })

  test('nor does what was not looked for, or not mentioned at all', () => {
    expect(kindsOf(asked([BAFFLE], [baffle({ outcome: 'not-looked-for' })]))).toEqual([])
    expect(kindsOf(asked([BAFFLE], []))).toEqual([])
  })

  test('a search that did not find it says how it was made, and is firm only where the place was laid open', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom(...SEARCH_METHODS), { minLength: 1 }), (searchedBy) => {
        const [outcome] = outcomesOf(
          asked([BAFFLE], [baffle({ outcome: 'not-found', searchedBy })]),
          'component-presence',
        )
        const open = ['excavation', 'camera', 'seen-through-opening'].some((method) =>
          searchedBy.includes(method as never),
        )
        expect(outcome).toMatchObject({
          raises: 'component-missing',
          certainty: { word: open ? 'firm' : 'likely' },
        })
        expect(outcome!.reason).toMatchObject({ is: 'searched', by: searchedBy })
      }),
    )
  })

  test('a missing baffle must be put back; a missing riser is for a reviewer', () => {
    const [gone] = asked(
      [BAFFLE],
      [baffle({ outcome: 'not-found', searchedBy: ['seen-through-opening'] })],
    ).discrepancies
    expect(gone).toMatchObject({ severity: 'action', act: 'replace-part' })
    const riser = permit([{ tag: 'riser', kind: 'riser' }])
    const [missing] = asked(
      [riser],
      [
        {
          key: '88-1/riser',
          label: 'riser',
          kind: 'riser',
          outcome: 'not-found',
          searchedBy: ['excavation'],
        },
      ],
    ).discrepancies.filter(({ kind }) => kind === 'component-missing')
    expect(missing).toMatchObject({ severity: 'review', act: 'correct-or-search-again' })
  })

  test('a baffle that no card lists is asked for all the same, and never said to be on record', () => {
    const gone = baffle({ key: undefined, outcome: 'not-found', searchedBy: ['seen-through-opening'] })
    const missing = asked([permit([{ tag: 'tank', kind: 'tank' }])], [gone]).discrepancies.find(
      ({ kind }) => kind === 'component-missing',
    )
    expect(missing).toMatchObject({ severity: 'action', outcome: { check: 'required-device' } })
    const item = itemOf({ discrepancy: missing!, decided: null })
    const said = [reasonWords(missing!.outcome), itemWords(item, 'en').says, itemWords(item, 'es').says].join(
      '\n',
    )
    expect(said).not.toMatch(/on record|county’s record|en el registro/)
    expect(said).toMatch(/every septic tank needs one/i)
  })
})
