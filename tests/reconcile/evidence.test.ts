import { describe, expect, test } from 'vitest'
import { canonicalText } from '../../src/base/canonical.ts'
import { must } from '../../src/base/result.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import type { ReconcileInput } from '../../src/reconcile/case.ts'
import { evidenceOf } from '../../src/reconcile/evidence.ts'
import { reconcile } from '../../src/reconcile/reconcile.ts'
import { day, findingsRecord, inspectionThatDiffers, permit1974, permitRecord } from '../support/quillback.ts'

const book = must(await loadRuleBook())

const input = (over: Partial<ReconcileInput> = {}): ReconcileInput => ({
  county: 'quillback',
  asOf: day('2026-11-25'),
  permits: [{ id: 'p', revision: 1, record: permitRecord(permit1974), sources: {} }],
  corrections: [],
  findings: {
    id: 'f',
    firm: 'firm',
    submittedOn: day('2026-10-20'),
    record: findingsRecord(inspectionThatDiffers),
  },
  book,
  ...over,
})

/** The evidence of the difference of a kind, as text. */
function evidence(of: ReconcileInput, kind: string): string {
  const found = reconcile(of).discrepancies.find((it) => it.kind === kind)
  expect(found, kind).toBeDefined()
  return canonicalText(evidenceOf(found!))
}

const findings = input().findings!
const permit = input().permits[0]!
const TANK = 'capacity-below-record'

describe('the ground of a decision stays where it is when', () => {
  const before = evidence(input(), TANK)

  test.each<[string, Partial<ReconcileInput>]>([
    ['another day asks', { asOf: day('2026-12-24') }],
    ['another value of the paper is mended', { permits: [{ ...permit, revision: 2 }] }],
    ['the same is found on another inspection', { findings: { ...findings, id: 'other', firm: 'rival' } }],
  ])('%s', (_, over) => {
    expect(evidence(input(over), TANK)).toBe(before)
  })

  test('an inspection that is out of date is still out of date the day after', () => {
    const old = { ...findings, record: { ...findings.record, inspectedOn: day('2020-01-01') } }
    const on = (asOf: string) => evidence(input({ asOf: day(asOf), findings: old }), 'findings-stale')
    expect(on('2026-11-25')).toBe(on('2026-11-26'))
  })
})

describe('the ground of a decision moves when', () => {
  const before = evidence(input(), TANK)

  test('the record is read otherwise', () => {
    const components = permit.record.components.map((it) =>
      it.tag === 'tank' ? { ...it, capacity: { gal: 1200, halfStepGal: 0.5, asWritten: '1,200 gal' } } : it,
    )
    const read = input({ permits: [{ ...permit, record: { ...permit.record, components } }] })
    expect(evidence(read, TANK)).not.toBe(before)
  })

  test('the tank is measured otherwise', () => {
    const [tank, ...others] = findings.record.components
    const longer = { ...tank!, length: { ...tank!.length!, ft: 6.25, asWritten: '6\'-3"' } }
    const measured = { ...findings, record: { ...findings.record, components: [longer, ...others] } }
    expect(evidence(input({ findings: measured }), TANK)).not.toBe(before)
  })

  test('it is measured in another way', () => {
    const [tank, ...others] = findings.record.components
    const probed = { ...tank!, length: { ...tank!.length!, method: 'laser-meter' as const } }
    const measured = { ...findings, record: { ...findings.record, components: [probed, ...others] } }
    expect(evidence(input({ findings: measured }), TANK)).not.toBe(before)
  })
})
