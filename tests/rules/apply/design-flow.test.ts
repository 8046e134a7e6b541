import { expect, test } from 'vitest'
import { designFlow } from '../../../src/rules/apply/design-flow.ts'
import { inForce } from '../../../src/rules/in-force.ts'
import { day } from '../day.ts'
import { SHIPPED } from '../shipped-book.ts'

const flow = (place: string, bedrooms: number) => {
  const rule = inForce(SHIPPED, place, 'design.flow-per-bedroom', day('2025-01-01'))
  if (rule.state !== 'in-force') throw new Error(rule.state)
  return { ...designFlow(rule, bedrooms), verified: rule.verified }
}

test.each([
  // 12VAC5-640-440(5), read: 150 gpd a bedroom
  ['virginia', 3, 450, 'read'],
  // 25 Pa. Code 73.31(a)(2), read: 400 gpd and 100 for each bedroom over three
  ['pennsylvania', 2, 400, 'read'],
  ['pennsylvania', 5, 600, 'read'],
  // OAC 3701-29-11(B)(1), read: 120 gpd a bedroom, at least 240
  ['ohio', 1, 240, 'read'],
  ['ohio', 4, 480, 'read'],
  // 310 CMR 15.203, from memory: 110 gpd a bedroom, at least 330
  ['massachusetts', 2, 330, 'from-memory'],
  ['massachusetts', 4, 440, 'from-memory'],
  // 10-144 CMR chapter 241, Table 5A, a cut copy
  ['maine', 1, 180, 'second-hand'],
  ['maine', 2, 180, 'second-hand'],
  ['maine', 3, 270, 'second-hand'],
  ['maine', 4, 360, 'second-hand'],
  ['maine', 5, 450, 'second-hand'],
  ['maine', 6, 540, 'second-hand'],
  ['maine', 7, 630, 'second-hand'],
  // IDAPA 58.01.03.007, a cut copy: 250 for three bedrooms, 50 more or less for each
  ['idaho', 2, 200, 'second-hand'],
  ['idaho', 3, 250, 'second-hand'],
  ['idaho', 4, 300, 'second-hand'],
  // 567 IAC 69.8(2)c and 18 AAC 72.530(b)(1), cut copies: 150 gpd a bedroom
  ['iowa', 3, 450, 'second-hand'],
  ['alaska', 4, 600, 'second-hand'],
  // 902 KAR 10:085 Table 1, a cut copy: 110 gpd a bedroom
  ['kentucky', 3, 330, 'second-hand'],
  // 74:53:01:31: 120 gpd a bedroom
  ['south-dakota', 3, 360, 'read'],
])('%s, %d bedrooms: %d gpd (%s)', (place, bedrooms, gpd, verified) => {
  expect(flow(place, bedrooms)).toMatchObject({ value: gpd, verified })
})

test('the working can be redone by hand', () => {
  expect(flow('pennsylvania', 5).steps[0]).toMatchObject({
    numbers: '400 + 100 × max(0, 5 − 3)',
    result: '600 gpd',
  })
})
