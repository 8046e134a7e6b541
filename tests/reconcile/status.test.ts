import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../src/reconcile/kinds.ts'
import { STATUS_WORDS, type Standing, type StatusInput, statusOf } from '../../src/reconcile/status.ts'
import { DECISION_ACTIONS } from '../../src/records/decision.ts'

const standing = (over: Partial<Standing>): Standing => ({
  kind: 'material-differs',
  severity: 'review',
  says: 'It is of another material.',
  next: { who: 'reviewer', what: 'look at it' },
  decided: null,
  ...over,
})
const at = (over: Partial<StatusInput>, ...discrepancies: Standing[]): StatusInput => ({
  hasApprovedPermit: true,
  hasInspection: true,
  decidedBefore: false,
  discrepancies,
  ...over,
})

describe('the status word', () => {
  const cases: readonly (readonly [string, StatusInput])[] = [
    [
      'no-record',
      at({ hasApprovedPermit: false, hasInspection: false }, standing({ kind: 'record-absent' })),
    ],
    ['no-record', at({ hasApprovedPermit: false }, standing({ kind: 'record-unclear' }))],
    ['not-inspected', at({ hasInspection: false })],
    ['not-inspected', at({ hasInspection: false }, standing({ kind: 'record-unclear' }))],
    ['agrees', at({})],
    ['agrees', at({}, standing({ severity: 'note' }))],
    ['under-review', at({}, standing({}))],
    ['under-review', at({}, standing({ decided: 'ask-remeasurement' }))],
    ['action-needed', at({}, standing({ severity: 'action' }))],
    ['action-needed', at({}, standing({ decided: 'require-permit' }))],
    ['action-needed', at({}, standing({ severity: 'action', decided: 'require-repair' }))],
    ['action-needed', at({ hasApprovedPermit: false }, standing({ kind: 'level-high', severity: 'action' }))],
    ['settled', at({}, standing({ decided: 'accept' }))],
    ['settled', at({ decidedBefore: true })],
    ['out-of-date', at({}, standing({ kind: 'findings-stale' }), standing({}))],
    ['action-needed', at({}, standing({ kind: 'findings-stale' }), standing({ severity: 'action' }))],
  ]
  test.each(cases)('%s', (word, input) => {
    expect(statusOf(input).word).toBe(word)
  })

  test('every word has a case above', () => {
    expect(new Set(cases.map(([word]) => word))).toEqual(new Set(STATUS_WORDS))
  })

  test('what is outstanding is said once, what the owner has to do first', () => {
    const status = statusOf(
      at(
        {},
        standing({}),
        standing({
          kind: 'level-high',
          severity: 'action',
          says: 'It backs up.',
          next: { who: 'owner', what: 'have it looked at' },
        }),
        standing({}),
      ),
    )
    expect(status.outstanding).toEqual([
      { says: 'It backs up.', who: 'owner', what: 'have it looked at' },
      { says: 'It is of another material.', who: 'reviewer', what: 'look at it' },
    ])
  })

  test('who has to act is whoever the decision asks, not whoever had to decide', () => {
    const asks = (decided: Standing['decided']) => statusOf(at({}, standing({ decided }))).outstanding[0]?.who
    expect([asks(null), asks('require-permit'), asks('require-repair'), asks('ask-remeasurement')]).toEqual([
      'reviewer',
      'owner',
      'owner',
      'firm',
    ])
  })
})

const anyStanding: fc.Arbitrary<Standing> = fc.record({
  kind: fc.constantFrom(...DISCREPANCY_KINDS),
  severity: fc.constantFrom(...SEVERITIES),
  says: fc.constantFrom('One.', 'Another.'),
  next: fc.constant({ who: 'reviewer', what: 'look at it' } as const),
  decided: fc.option(fc.constantFrom(...DECISION_ACTIONS)),
})
const anyInput: fc.Arbitrary<StatusInput> = fc.record({
  hasApprovedPermit: fc.boolean(),
  hasInspection: fc.boolean(),
  decidedBefore: fc.boolean(),
  discrepancies: fc.array(anyStanding, { maxLength: 6 }),
})

test('notes never change the word, nor does the order of the differences', () => {
  fc.assert(
    fc.property(anyInput, (input) => {
      const { word } = statusOf(input)
      const discrepancies = input.discrepancies.filter(({ severity }) => severity !== 'note').reverse()
      expect(statusOf({ ...input, discrepancies }).word).toBe(word)
    }),
  )
})

test('nothing is outstanding exactly where the word says so, once there is a record and an inspection', () => {
  fc.assert(
    fc.property(anyInput, (input) => {
      const { word, outstanding } = statusOf({ ...input, hasApprovedPermit: true, hasInspection: true })
      expect(outstanding.length === 0).toBe(word === 'agrees' || word === 'settled')
    }),
  )
})
