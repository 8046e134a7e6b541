import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type DecisionInForce,
  DISCREPANCY_STATES,
  project,
  type Raised,
  type Stood,
  stateAfter,
} from '../../src/reconcile/projection.ts'
import { DECISION_ACTIONS } from '../../src/records/decision.ts'

const decision = (over: Partial<DecisionInForce> = {}): DecisionInForce => ({
  action: 'accept',
  evidenceHash: 'e1',
  inspectedSince: false,
  ...over,
})
const stood = (over: Partial<Stood> = {}): Stood => ({
  key: 'k',
  state: 'open',
  evidenceHash: 'e1',
  decision: null,
  ...over,
})
const again = (evidenceHash = 'e1'): Raised[] => [{ key: 'k', evidenceHash }]

describe('what a run makes of a discrepancy', () => {
  const cases: readonly (readonly [string, Stood[], Raised[], string, string | null])[] = [
    ['a new one appears, open', [], again(), 'open', 'appeared'],
    ['an unchanged one stays as it is', [stood()], again(), 'open', null],
    ['one with other evidence has changed', [stood()], again('e2'), 'open', 'changed'],
    ['one no longer raised has vanished', [stood()], [], 'vanished', 'vanished'],
    ['one that had vanished before says nothing', [stood({ state: 'vanished' })], [], 'vanished', null],
    ['one that is back has returned', [stood({ state: 'vanished' })], again(), 'open', 'returned'],
    ['a decision stays', [stood({ state: 'decided', decision: decision() })], again(), 'decided', null],
    [
      'a decision whose evidence changed says that its ground has moved',
      [stood({ state: 'decided', decision: decision() })],
      again('e2'),
      'ground-moved',
      'changed',
    ],
    [
      'evidence that comes back to what was decided on makes the decision good again',
      [stood({ state: 'ground-moved', evidenceHash: 'e2', decision: decision() })],
      again('e1'),
      'decided',
      'changed',
    ],
    [
      'what was accepted may come back as it was',
      [stood({ state: 'vanished', decision: decision() })],
      again(),
      'decided',
      'returned',
    ],
    [
      'what was repaired may not',
      [stood({ state: 'vanished', decision: decision({ action: 'require-repair' }) })],
      again(),
      'ground-moved',
      'returned',
    ],
    [
      'a measurement that was asked for has come, and the difference is still there',
      [
        stood({
          state: 'decided',
          decision: decision({ action: 'ask-remeasurement', inspectedSince: true }),
        }),
      ],
      again(),
      'ground-moved',
      null,
    ],
    [
      'an inspection since moves nothing else',
      [stood({ state: 'decided', decision: decision({ inspectedSince: true }) })],
      again(),
      'decided',
      null,
    ],
  ]
  test.each(cases)('%s', (_, before, raised, state, change) => {
    expect(project(before, raised)).toEqual([{ key: 'k', state, change }])
  })
})

const key = fc.constantFrom('a', 'b', 'c', 'd')
const hash = fc.constantFrom('e1', 'e2', 'e3')
const anyDecision: fc.Arbitrary<DecisionInForce> = fc.record({
  action: fc.constantFrom(...DECISION_ACTIONS),
  evidenceHash: hash,
  inspectedSince: fc.boolean(),
})
const anyBefore: fc.Arbitrary<Stood[]> = fc.uniqueArray(
  fc.record({
    key,
    state: fc.constantFrom(...DISCREPANCY_STATES),
    evidenceHash: hash,
    decision: fc.option(anyDecision),
  }),
  { selector: (it) => it.key },
)
const anyRaised: fc.Arbitrary<Raised[]> = fc.uniqueArray(fc.record({ key, evidenceHash: hash }), {
  selector: (it) => it.key,
})

test('every discrepancy is told once: those raised stand, the others have vanished', () => {
  fc.assert(
    fc.property(anyBefore, anyRaised, (before, raised) => {
      const projected = project(before, raised)
      const keys = new Set([...before, ...raised].map((it) => it.key))
      expect(projected.map((it) => it.key).sort()).toEqual([...keys].sort())
      for (const { key: of, state } of projected) {
        expect(state === 'vanished').toBe(!raised.some((it) => it.key === of))
      }
    }),
  )
})

test('a run over what it has just made changes nothing', () => {
  fc.assert(
    fc.property(anyBefore, anyRaised, (before, raised) => {
      const stoodAfter = project(before, raised).map(({ key: of, state }): Stood => {
        const old = before.find((it) => it.key === of)
        const now = raised.find((it) => it.key === of)
        return {
          key: of,
          state,
          evidenceHash: now?.evidenceHash ?? old!.evidenceHash,
          decision: old?.decision ?? null,
        }
      })
      for (const { change } of project(stoodAfter, raised)) expect(change).toBeNull()
    }),
  )
})

test('only what nobody decided is open, and only a decision on this very evidence holds', () => {
  fc.assert(
    fc.property(fc.option(anyDecision), hash, fc.boolean(), (made, evidenceHash, returned) => {
      const state = stateAfter(made, evidenceHash, returned)
      expect(state === 'open').toBe(made === null)
      if (state === 'decided') expect(made?.evidenceHash).toBe(evidenceHash)
    }),
  )
})
