import { describe, expect, test } from 'vitest'
import { addDays } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import type { ReconcileInput } from '../../src/reconcile/case.ts'
import { goodUntil } from '../../src/reconcile/good-until.ts'
import { reconcile } from '../../src/reconcile/reconcile.ts'
import { day, findingsRecord, inspectionThatAgrees, permit1974, permitRecord } from '../support/quillback.ts'

const book = must(await loadRuleBook())

const at = (asOf: string, over: Partial<ReconcileInput> = {}): ReconcileInput => ({
  county: 'quillback',
  asOf: day(asOf),
  permits: [{ id: 'p', revision: 1, record: permitRecord(permit1974), sources: {} }],
  corrections: [],
  findings: {
    id: 'f',
    firm: 'firm',
    submittedOn: day('2026-10-20'),
    record: findingsRecord(inspectionThatAgrees),
  },
  book,
  ...over,
})
const kinds = (input: ReconcileInput) => reconcile(input).discrepancies.map(({ key }) => key)

describe('how long an answer holds', () => {
  test('to the last day on which the inspection counts: one year in Quillback County (Code 9.44, invented)', () => {
    expect(goodUntil(at('2026-11-25'))).toBe('2027-10-12')
  })

  test('the day after is the first on which it says otherwise', () => {
    const until = goodUntil(at('2026-11-25'))!
    expect(kinds(at(until))).not.toContain('findings-stale | system')
    expect(kinds(at(addDays(until, 1)))).toContain('findings-stale | system')
  })

  test('on every day up to it the answer is the same', () => {
    const until = goodUntil(at('2026-11-25'))!
    const first = kinds(at('2026-11-25'))
    for (let on = day('2026-11-25'); on <= until; on = addDays(on, 7)) expect(kinds(at(on))).toEqual(first)
  })

  test('a metal tank that is about to reach the age of the rule (20 years, Code 9.41, invented) ends it sooner', () => {
    const permits = [
      {
        id: 'p',
        revision: 1,
        record: permitRecord({
          ...permit1974,
          issuedOn: '2007-01-15',
          approvedOn: '2007-02-01',
          components: [{ tag: 'tank', kind: 'tank', material: 'steel' }],
        }),
        sources: {},
      },
    ]
    const input = at('2026-11-25', { permits, findings: null })
    const until = goodUntil(input)!
    expect(until).toBe('2027-01-15')
    const aged = (on: typeof until) =>
      kinds({ ...input, asOf: on }).some((it) => it.startsWith('condition-poor'))
    expect([aged(until), aged(addDays(until, 1))]).toEqual([false, true])
  })

  test('for ever where neither an inspection nor an age nor a rule is to come', () => {
    expect(goodUntil(at('2026-11-25', { permits: [], findings: null }))).toBeNull()
  })
})
