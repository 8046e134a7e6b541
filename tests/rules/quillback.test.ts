import { describe, expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { requiredCapacity } from '../../src/rules/apply/required-capacity.ts'
import { inForce } from '../../src/rules/in-force.ts'
import { day } from './day.ts'
import { SHIPPED } from './shipped-book.ts'

const capacity = (on: string) => inForce(SHIPPED, 'quillback', 'tank.minimum-capacity', day(on))

describe('the invented county’s history of adoption', () => {
  test('before 1967 there was no table', () => {
    expect(capacity('1966-12-31')).toEqual({
      state: 'not-yet',
      from: '1967-01-01',
      pack: 'public-health-service/tanks',
    })
  })

  test.each([
    ['1967-01-01', 'public-health-service/tanks', 900, 'from-memory', false],
    ['1986-06-30', 'public-health-service/tanks', 900, 'from-memory', false],
    ['1986-07-01', 'ipsdc/tanks', 1000, 'second-hand', false],
    ['2004-02-29', 'ipsdc/tanks', 1000, 'second-hand', false],
    ['2004-03-01', 'quillback/code', 1000, 'read', true],
    ['2025-01-01', 'quillback/code', 1000, 'read', true],
  ])('on %s %s asks %d gal for three bedrooms', (on, pack, gal, verified, invented) => {
    const answer = capacity(on)
    expect(answer).toMatchObject({ state: 'in-force', pack, verified, invented })
    if (answer.state !== 'in-force') return
    expect(must(requiredCapacity(answer, { bedrooms: 3, flowGpd: null })).value).toBe(gal)
  })

  test('its own setbacks win over the state’s, which win over the model code’s', () => {
    expect(inForce(SHIPPED, 'quillback', 'setbacks', day('2010-01-01'))).toMatchObject({
      pack: 'quillback/code',
      kind: 'county',
      overridden: [{ pack: 'winnow/code', kind: 'state' }],
    })
    expect(inForce(SHIPPED, 'quillback', 'setbacks', day('1990-01-01'))).toMatchObject({
      pack: 'winnow/code',
      overridden: [{ pack: 'ipsdc/tanks', kind: 'model-code' }],
    })
    expect(inForce(SHIPPED, 'quillback', 'setbacks', day('1970-01-01')).state).toBe('not-yet')
  })

  test('a convention fills in where no rule speaks, and gives way where one does', () => {
    const accuracy = (on: string) => inForce(SHIPPED, 'quillback', 'position.record-accuracy-ft', day(on))
    expect(accuracy('1990-01-01')).toMatchObject({
      value: { amount: 1 },
      verified: 'common-practice',
      kind: 'practice',
    })
    expect(accuracy('2010-01-01')).toMatchObject({ value: { amount: 0.5 }, kind: 'county' })
  })

  test('lender’s distances stand apart from the county’s', () => {
    expect(inForce(SHIPPED, 'quillback', 'setbacks.lender', day('2020-01-01'))).toMatchObject({
      pack: 'fha/setbacks',
      kind: 'lender',
    })
  })
})
