import { describe, expect, test } from 'vitest'
import { reconcile } from '../../../src/reconcile/reconcile.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { inputOf, permit } from '../asked.ts'

/** What the check of the absorption area says of a permit, by the law of a place. */
function told(place: string, issuedOn: string, parts: Parameters<typeof permit>[0], facts: object) {
  const file = permit(parts, { issuedOn, approvedOn: issuedOn, ...facts })
  const { outcomes } = reconcile({ ...inputOf([file], null), county: place })
  const own = outcomes.filter(({ check }) => check === 'absorption-against-code')
  return Object.fromEntries(own.map((it) => [it.facet, { verdict: it.verdict, says: reasonWords(it) }]))
}
const pits = [
  { tag: 'pit', kind: 'seepage-pit', diameter: '8 ft', effectiveDepth: '6 ft', count: 2 },
] as never
const trenches = (gravel: object) =>
  [{ tag: 'trench', kind: 'trench', length: '100 ft', width: '3 ft', count: 3, ...gravel }] as never

describe('what absorbs decides which table speaks', () => {
  // N.J.A.C. 7:9A-11.2(b): 108 sq ft a bedroom at 11 to 20 min/in; two pits of 8 by 6 ft have 301.6.
  test('a table for pits judges pits, and is silent on trenches', () => {
    const facts = { bedrooms: '4', percRateMpi: '15' }
    expect(told('new-jersey', '2025-05-01', pits, facts)['when permitted']?.verdict).toBe('falls-short')
    const two = told('new-jersey', '2025-05-01', pits, { ...facts, bedrooms: '2' })
    expect(two['when permitted']?.verdict).toBe('suffices')
    const silent = told('new-jersey', '2025-05-01', trenches({}), facts)['when permitted']
    expect(silent?.verdict).toBe('cannot-tell')
    expect(silent?.says).toContain('is for seepage pits only')
  })

  // Public Health Service: pits are unsuitable over 30 min/in, trenches over 60.
  test('slow ground is unsuitable for pits before it is for trenches', () => {
    const facts = { bedrooms: '3', percRateMpi: '40' }
    const pit = told('public-health-service', '1970-05-01', pits, facts)['when permitted']
    expect(pit?.says).toContain('unsuitable')
    const trench = told('public-health-service', '1970-05-01', trenches({}), facts)['when permitted']
    expect(trench?.verdict).not.toBe('cannot-tell')
  })

  // 74:53:01:31 at 1,000 gpd and 36 min/in: 1,200 sq ft, 720 with two feet of gravel; 900 are there.
  test('gravel below the pipe counts where the rule gives credit for it, and is asked for where it is not known', () => {
    const facts = { bedrooms: '8', designFlowGpd: '1000', percRateMpi: '36' }
    const say = (gravel: object) =>
      told('south-dakota', '1990-05-01', trenches(gravel), facts)['when permitted']
    expect(say({})?.says).toContain('depth of gravel')
    expect(say({ effectiveDepth: '24 in' })?.verdict).toBe('suffices')
    expect(say({ effectiveDepth: '6 in' })?.verdict).toBe('falls-short')
  })
})
