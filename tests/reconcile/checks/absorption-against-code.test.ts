import { describe, expect, test } from 'vitest'
import { asked, outcomesOf, permit } from '../asked.ts'

/** Three bedrooms at 30 min/in: the trenches that the table of that year asked, and more or fewer of them. */
const verdictFor = (lengthFt: number, width: string) => {
  const answer = asked(
    [
      permit([{ tag: 'trench', kind: 'trench', length: `${lengthFt} ft`, width, count: 2 }], {
        percRateMpi: 30,
      }),
    ],
    [],
  )
  const outcome = outcomesOf(answer, 'absorption-against-code').find(
    ({ facet }) => facet === 'when permitted',
  )!
  return { ...outcome, reason: outcome.reason }
}
const required = (() => {
  const { reason } = verdictFor(100, '3 ft')
  if (reason.is !== 'absorption-code') throw new Error(reason.is)
  return reason.least.value
})()

describe('a stated trench width is the width of the design', () => {
  test('what was designed to the table meets the table', () => {
    expect(verdictFor(Math.ceil(required / 6), '3 ft').verdict).toBe('suffices')
  })
  test('a tenth less falls short of it', () => {
    expect(verdictFor(Math.round((required * 0.9) / 6), '3 ft').verdict).toBe('falls-short')
  })
  test('its uncertainty is that of a bucket and not half a foot', () => {
    const { reason } = verdictFor(100, '3 ft')
    if (reason.is !== 'absorption-code') throw new Error(reason.is)
    expect(reason.provided.value).toBe(600)
    expect(reason.provided.U!).toBeLessThan(25)
    const about = verdictFor(100, 'about 3 ft').reason
    if (about.is !== 'absorption-code') throw new Error(about.is)
    expect(about.provided.U!).toBeGreaterThan(100)
  })
})
