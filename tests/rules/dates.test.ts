import { expect, test } from 'vitest'
import { addDays } from '../../src/base/plain-date.ts'
import { inForce } from '../../src/rules/in-force.ts'
import type { ParameterName } from '../../src/rules/parameters.ts'
import dates from '../oracles/rule-dates/spans.json' with { type: 'json' }
import { day } from './day.ts'
import { SHIPPED } from './shipped-book.ts'

type Case = { source: string; place: string; name: string; from?: string; until?: string; next?: boolean }

test.each(dates.cases as Case[])('$source', ({ place, name, from, until, next }) => {
  const on = (date: string) => inForce(SHIPPED, place, name as ParameterName, day(date))
  const held = (date: string) => {
    const answer = on(date)
    return answer.state === 'in-force' ? [answer.entry.from, answer.entry.until] : answer.state
  }
  const span = [from ?? null, until ?? null]
  if (from !== undefined) {
    expect(held(addDays(day(from), -1))).toBe('not-yet')
    expect(held(from)).toEqual(span)
  }
  if (until !== undefined) {
    expect(held(addDays(day(until), -1))).toEqual(span)
    if (next) expect(held(until)).toEqual([until, expect.toSatisfy((end) => end === null || end > until)])
    else expect(held(until)).toBe('ended')
  }
})
