import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { surenessOf } from '../../src/http/pages/documents/sureness.ts'
import { AS_EVERYWHERE, ownShares, STEPS, type Tally } from '../../src/reading/assemble/own-shares.ts'
import { tallyOf } from '../../src/reading/assemble/tally.ts'
import { SEEN_BY } from '../../src/reading/proposal.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { pageOfText } from './page-of-text.ts'

const tally = (step: number, confirmed: number, changed: number, more: Partial<Tally> = {}): Tally => ({
  witness: 'text',
  step,
  ask: 'number',
  confirmed,
  changed,
  ...more,
})
const TOP = STEPS.length - 1

describe('a county’s own confirmations', () => {
  test('leave a confidence as it is until there are enough of them', () => {
    expect(ownShares([])(0.97, 'text', 'number')).toBe(AS_EVERYWHERE(0.97, 'text', 'number'))
    expect(ownShares([tally(TOP, 0, 29)])(0.99, 'text', 'bedrooms')).toBe(0.99)
  })
  test('that bear it out leave it as it is', () => {
    expect(ownShares([tally(TOP, 496, 4)])(0.99, 'text', 'number')).toBe(0.99)
  })
  test('that do not lower it to what they allow at the most', () => {
    const own = ownShares([tally(TOP, 80, 20, { ask: 'x' })])
    expect(own(0.99, 'text', 'number')).toBeCloseTo(0.867, 3)
    expect(own(0.99, 'alike', 'number')).toBe(0.99)
  })
  test('raise it no further than they show at the least', () => {
    const own = ownShares([tally(1, 100, 0)])
    expect(own(0.62, 'text', 'number')).toBeCloseTo(0.963, 3)
  })
  test('of one field that is changed often count against that field alone', () => {
    const many = tally(TOP, 4_000, 4, { ask: 'bedrooms' })
    const own = ownShares([many, tally(TOP, 30, 20, { ask: 'approvedOn' })])
    expect(own(0.99, 'text', 'approvedOn')).toBeCloseTo(0.724, 3)
    expect(own(0.99, 'text', 'bedrooms')).toBeCloseTo(0.99, 2)
  })
  test('never turn the order of two confidences, nor leave 0 to 1', () => {
    const tallies = fc.array(
      fc.record({
        witness: fc.constantFrom(...SEEN_BY),
        step: fc.nat(TOP),
        ask: fc.constantFrom('number', 'kind'),
        confirmed: fc.nat(300),
        changed: fc.nat(300),
      }),
      { maxLength: 20 },
    )
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(tallies, share, share, fc.constantFrom(...SEEN_BY), (all, a, b, witness) => {
        const own = ownShares(all)
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((it) => own(it, witness, 'number'))
        expect(low).toBeLessThanOrEqual(high! + 1e-12)
        expect(low).toBeGreaterThanOrEqual(0)
        expect(high).toBeLessThanOrEqual(1)
      }),
    )
  })
})

const LINES = ['PERMIT NO. 1978-014', 'Bedrooms: 3', 'Septic tank capacity: 1,000 gal', 'Approved: 6/12/1978']
const readAs = async (tallies: readonly Tally[]) =>
  proposePermits([await associated(pageOfText(LINES))], QUILLBACK, [], ownShares(tallies))[0]!

test('marks obey it: what a county changes often is checked there, and its general confidence is kept', async () => {
  const at = (proposal: Awaited<ReturnType<typeof readAs>>) =>
    proposal.fields.find(({ pointer }) => pointer === '/approvedOn')!
  const [before, after] = [
    at(await readAs([])),
    at(await readAs([tally(TOP, 20, 20, { ask: 'approvedOn' })])),
  ]
  expect([surenessOf(before), surenessOf(after)]).toEqual(['high', 'check'])
  expect(after.general).toEqual(before.general)
})

test('readings are told by what stands in the permit that was entered', async () => {
  const proposal = await readAs([])
  const { components, ...entry } = proposal.entry
  const tank = { ...components[0]!, capacity: '1,250 gal' }
  const same = tallyOf(proposal, { ...entry, approvedOn: '1978-06-12', components }, null)
  expect(same.every(({ changed }) => changed === 0)).toBe(true)
  expect(same.map(({ ask }) => ask)).toEqual(
    expect.arrayContaining(['number', 'bedrooms', 'capacity', 'approvedOn']),
  )
  const other = tallyOf(proposal, { ...entry, bedrooms: 4, components: [tank] }, null)
  expect(
    other
      .filter(({ changed }) => changed > 0)
      .map(({ ask }) => ask)
      .sort(),
  ).toEqual(['bedrooms', 'capacity'])
  const none = tallyOf(proposal, { ...entry, components: [] }, null)
  expect(none.find(({ ask }) => ask === 'capacity')).toMatchObject({ confirmed: 0, changed: 1 })
})
