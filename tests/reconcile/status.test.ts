import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { consequenceOf } from '../../src/reconcile/consequence.ts'
import { DISCREPANCY_KINDS, type DiscrepancyKind, SEVERITIES } from '../../src/reconcile/kinds.ts'
import type { Outcome } from '../../src/reconcile/outcome.ts'
import type { Discrepancy } from '../../src/reconcile/reconcile.ts'
import { STATUS_WORDS, type Standing, type StatusInput, statusOf } from '../../src/reconcile/status.ts'
import { DECISION_ACTIONS, type DecisionAction, WAIVERS } from '../../src/records/decision.ts'
import { partOnRecord, SYSTEM } from '../../src/records/part.ts'
import { statusWords, VOICES } from '../../src/words/agent/status.ts'
import { LANGUAGES } from '../../src/words/language.ts'

const outcome = (over: Partial<Outcome> = {}): Outcome => ({
  check: 'material',
  subject: SYSTEM,
  facet: null,
  verdict: 'differs',
  raises: null,
  reason: { is: 'other-material', recorded: 'concrete', found: 'steel' },
  certainty: { word: 'firm', basis: 'seen' },
  exhibits: [],
  steps: [],
  citations: [],
  wouldSettle: null,
  ...over,
})
const differs = (kind: DiscrepancyKind, over: Partial<Discrepancy> = {}): Discrepancy => {
  const of = over.outcome ?? outcome()
  return { key: kind, kind, outcome: of, ...consequenceOf(kind, of), ...over }
}
const standing = (
  kind: DiscrepancyKind,
  decided: DecisionAction | null = null,
  over: Partial<Discrepancy> = {},
): Standing => ({ discrepancy: differs(kind, over), decided })
const at = (over: Partial<StatusInput>, ...all: Standing[]): StatusInput => ({
  hasApprovedPermit: true,
  hasInspection: true,
  decidedBefore: false,
  standing: all,
  ...over,
})

describe('the status word', () => {
  const review = standing('material-differs')
  const cases: readonly (readonly [string, StatusInput])[] = [
    ['no-record', at({ hasApprovedPermit: false, hasInspection: false }, standing('record-absent'))],
    ['no-record', at({ hasApprovedPermit: false }, standing('record-unclear'))],
    ['not-inspected', at({ hasInspection: false })],
    ['not-inspected', at({ hasInspection: false }, standing('record-unclear'))],
    ['matches', at({})],
    ['matches', at({}, standing('line-replaced'))],
    ['under-review', at({}, review)],
    ['under-review', at({}, standing('material-differs', 'ask-remeasurement'))],
    ['action-needed', at({}, standing('level-high'))],
    ['action-needed', at({}, standing('material-differs', 'require-permit'))],
    ['action-needed', at({}, standing('level-high', 'require-repair'))],
    ['action-needed', at({ hasApprovedPermit: false }, standing('level-high'))],
    ['resolved', at({}, standing('material-differs', 'accept'))],
    ['resolved', at({ decidedBefore: true })],
    ['out-of-date', at({}, standing('findings-stale'), review)],
    ['out-of-date', at({}, standing('findings-stale'), standing('inspection-incomplete'))],
    ['incomplete', at({}, standing('inspection-incomplete'))],
    ['incomplete', at({}, standing('inspection-incomplete'), review)],
    ['incomplete', at({ decidedBefore: true }, standing('inspection-incomplete'))],
    ['resolved', at({}, standing('inspection-incomplete', 'accept'))],
    ['action-needed', at({}, standing('inspection-incomplete'), standing('equipment-failed'))],
    ['action-needed', at({}, standing('findings-stale'), standing('level-high'))],
  ]
  test.each(cases)('%s', (word, input) => {
    expect(statusOf(input).word).toBe(word)
  })

  test('every word has a case above', () => {
    expect(new Set(cases.map(([word]) => word))).toEqual(new Set(STATUS_WORDS))
  })
})

describe('what is open', () => {
  test('of two unpermitted lines, one decided and one not, both stand, each with its own turn', () => {
    const line = (label: string) =>
      differs('line-replaced-without-permit', {
        outcome: outcome({ subject: partOnRecord({ key: label, label, kind: 'effluent-line' }) }),
      })
    const { items } = statusOf(
      at(
        {},
        { discrepancy: line('line 1'), decided: 'require-permit' },
        { discrepancy: line('line 2'), decided: null },
      ),
    )
    expect(items.map(({ part, state }) => [part.mark, state])).toEqual([
      ['1', 'owner-must-act'],
      ['2', 'county-reviewing'],
    ])
  })

  test('those who must act come first', () => {
    const { items } = statusOf(at({}, standing('material-differs'), standing('level-high')))
    expect(items.map(({ kind }) => kind)).toEqual(['level-high', 'material-differs'])
  })

  test('whose turn it is follows the decision, not whoever had to decide', () => {
    const turn = (decided: DecisionAction | null) =>
      statusOf(at({}, standing('material-differs', decided))).items[0]?.state
    expect([turn(null), turn('require-permit'), turn('require-repair'), turn('ask-remeasurement')]).toEqual([
      'county-reviewing',
      'owner-must-act',
      'owner-must-act',
      'inspector-must-measure',
    ])
  })

  test('severity and next step hang on the typed reason, whatever a label says', () => {
    const collapsed = (label: string) =>
      consequenceOf(
        'condition-poor',
        outcome({
          subject: partOnRecord({ key: 'pit', label, kind: 'seepage-pit' }),
          reason: { is: 'condition', seen: 'collapsed', words: null },
        }),
      )
    expect(collapsed('pit')).toMatchObject({ severity: 'action', act: 'repair-or-replace' })
    expect(collapsed('rear: pit')).toEqual(collapsed('pit'))
  })
})

const anyStanding: fc.Arbitrary<Standing> = fc
  .record({
    kind: fc.constantFrom(...DISCREPANCY_KINDS),
    severity: fc.constantFrom(...SEVERITIES),
    decided: fc.option(fc.constantFrom(...DECISION_ACTIONS)),
  })
  .map(({ kind, severity, decided }) => standing(kind, decided, { severity }))
const anyInput: fc.Arbitrary<StatusInput> = fc.record({
  hasApprovedPermit: fc.boolean(),
  hasInspection: fc.boolean(),
  decidedBefore: fc.boolean(),
  standing: fc.array(anyStanding, { maxLength: 6 }),
})

test('notes never change the word, nor does the order of the differences', () => {
  fc.assert(
    fc.property(anyInput, (input) => {
      const { word } = statusOf(input)
      const reversed = input.standing
        .filter(({ discrepancy: { severity } }) => severity !== 'note')
        .toReversed()
      expect(statusOf({ ...input, standing: reversed }).word).toBe(word)
    }),
  )
})

test('the word follows from the items: it reassures only where nothing is open, and calls for action only where somebody must act', () => {
  fc.assert(
    fc.property(anyInput, (input) => {
      const { word, items } = statusOf({ ...input, hasApprovedPermit: true, hasInspection: true })
      expect(items.length === 0).toBe(word === 'matches' || word === 'resolved')
      expect(items.some(({ state }) => state === 'owner-must-act')).toBe(word === 'action-needed')
    }),
  )
})

test.each(WAIVERS)(
  'what the county waives (%s) is no longer open, and is never passed over in silence',
  (waiver) => {
    const status = statusOf(
      at({}, standing('inspection-incomplete', waiver), standing('material-differs', 'accept')),
    )
    expect([status.word, status.items]).toEqual(['resolved', []])
    expect(status.waived.map((it) => [it.kind, it.waiver])).toEqual([['inspection-incomplete', waiver]])
    for (const language of LANGUAGES) {
      const told = statusWords(status, language)
      expect(told.sentence).toBe(VOICES[language].resolvedByWaiver)
      expect(told.waived.map(({ why }) => why)).toEqual([VOICES[language].decided[waiver]])
    }
  },
)

test('what is resolved without a waiver says so', () => {
  const status = statusOf(at({}, standing('material-differs', 'accept')))
  expect(status.waived).toEqual([])
  expect(statusWords(status, 'en').sentence).toBe(VOICES.en.sentence.resolved)
})
