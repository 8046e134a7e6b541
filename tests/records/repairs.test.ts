import { describe, expect, test } from 'vitest'
import { asked, kindsOf, outcomesOf, permit } from '../reconcile/asked.ts'

const field = { tag: 'field', kind: 'trench', length: '60 ft', width: '36 in', count: 3 } as const
const old = permit([field], { percRateMpi: 10 })
const repair = (part: object, more: readonly object[] = []) =>
  permit([{ ...field, tag: 'new field', ...part }, ...more] as never, {
    number: '95-1',
    kind: 'repair',
    issuedOn: '1995-03-01',
    approvedOn: '1995-05-01',
  })
const area = (second: ReturnType<typeof repair>) => {
  const answer = asked([old, second], [])
  const { verdict, reason } = outcomesOf(answer, 'absorption-against-code').find(
    ({ facet }) => facet === 'today',
  )!
  const sqFt = reason.is === 'absorption-code' ? Math.round(reason.provided.value) : null
  return { answer, verdict, reason, sqFt }
}

describe('a repair that installs a field', () => {
  test('and says nothing of the old one is asked about, and until it is answered no areas are summed', () => {
    const { answer, verdict, reason } = area(repair({}))
    expect(answer.asBuilt.contradictions).toMatchObject([
      { gap: 'beside-or-instead', permit: '95-1', part: { label: 'new field' }, among: [{ label: 'field' }] },
    ])
    expect(kindsOf(answer)).toContain('record-unclear')
    expect(verdict).toBe('cannot-tell')
    expect(reason).toMatchObject({ is: 'unknown', gaps: [{ gap: 'beside-or-instead' }] })
  })
  test('beside the old one: both count', () => {
    expect(area(repair({ action: 'add' })).sqFt).toBe(1080)
    expect(area(repair({}, [{ tag: 'field', kind: 'trench', action: 'mention' }])).sqFt).toBe(1080)
  })
  test('instead of it: the new one alone', () => {
    expect(area(repair({ action: 'replace', replaces: ['field'] })).sqFt).toBe(540)
    expect(area(repair({}, [{ tag: 'field', kind: 'trench', action: 'abandon' }])).sqFt).toBe(540)
  })
})
