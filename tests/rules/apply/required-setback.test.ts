import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { requiredSetback } from '../../../src/rules/apply/required-setback.ts'
import { inForce } from '../../../src/rules/in-force.ts'
import { SETBACK_FROM, SETBACK_TO, type SetbackFrom, type SetbackTo } from '../../../src/rules/things.ts'
import oracle from '../../oracles/setbacks/tables.json' with { type: 'json' }
import { day } from '../day.ts'
import { SHIPPED } from '../shipped-book.ts'

const rule = (place: string, name: 'setbacks' | 'setbacks.lender' = 'setbacks', on = '2020-01-01') => {
  const answer = inForce(SHIPPED, place, name, day(on))
  if (answer.state !== 'in-force') throw new Error(`${place}: ${answer.state}`)
  return answer
}

describe.each(oracle.cases)('$source', ({ place, on, ft }) => {
  test.each(ft as [SetbackFrom, SetbackTo, number | null][])('%s to %s: %s ft', (from, to, feet) => {
    const it = requiredSetback(rule(place, 'setbacks', on), from, to)
    if (feet === null) expect(it).toMatchObject({ ok: false, error: { reason: 'no-such-pair' } })
    else expect(must(it).value.ft).toBe(feet)
  })
})

describe('FHA existing construction (HUD Handbook 4000.1, 24 CFR 200.926d(f)(3), second-hand)', () => {
  const lender = rule('fha', 'setbacks.lender')
  test.each<[SetbackFrom, SetbackTo, number]>([
    ['well', 'property-line', 10],
    ['tank', 'private-well', 50],
    ['absorption', 'private-well', 100],
  ])('%s to %s: %d ft', (from, to, ft) => {
    expect(must(requiredSetback(lender, from, to)).value.ft).toBe(ft)
  })
  test('75 ft stand beside it under their condition, and do not replace the 100', () => {
    const { value, steps } = must(requiredSetback(lender, 'absorption', 'private-well'))
    expect(value.conditional).toEqual([
      { from: 'absorption', to: 'private-well', ft: 75, when: 'if the local authority allows it' },
    ])
    expect(steps[0]?.numbers).toBe('absorption to private well; 75 ft if the local authority allows it')
  })
})

test('a kind of field takes the row of fields, and its own row where there is one', () => {
  expect(must(requiredSetback(rule('upc'), 'trench', 'private-well')).value.ft).toBe(100)
  expect(must(requiredSetback(rule('upc'), 'seepage-pit', 'private-well')).value.ft).toBe(150)
  expect(must(requiredSetback(rule('upc'), 'pump-chamber', 'slab')).value.ft).toBe(5)
})

test('asked for a foundation, a table that knows only slabs and basements tells what it knows', () => {
  const it = requiredSetback(rule('massachusetts'), 'absorption', 'foundation')
  expect(it).toMatchObject({
    ok: false,
    error: {
      table: '310 CMR 15.211',
      given: 'absorption to foundation',
      among: ['basement wall 20 ft', 'slab 10 ft'],
      narrower: [{ to: 'basement-wall' }, { to: 'slab' }],
    },
  })
})

test('every two things get an answer from every table', () => {
  const places = [
    'massachusetts',
    'washington',
    'missouri-pattern',
    'ipsdc',
    'upc',
    'winnow',
    'quillback',
  ].map((it) => rule(it))
  fc.assert(
    fc.property(
      fc.constantFrom(...places),
      fc.constantFrom(...SETBACK_FROM),
      fc.constantFrom(...SETBACK_TO),
      (it, from, to) => {
        const answer = requiredSetback(it, from, to)
        expect(answer.ok ? answer.value.value.ft : answer.error.table).toBeTruthy()
      },
    ),
  )
})
