import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { calibrated, LEAST_PROPOSED } from '../../src/reading/assemble/calibrated.ts'
import { SECOND } from '../../src/reading/assemble/choose.ts'
import { AS_EVERYWHERE } from '../../src/reading/assemble/own-shares.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import type { ProposedField } from '../../src/reading/proposal.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { pageOfText } from './page-of-text.ts'

const LINES = ['PERMIT NO. 1978-014', 'Bedrooms: 3', 'Septic tank capacity: 1,000 gal', 'Approved: 6/12/1978']

/** The page as a picture: how sure the first reader was, and what the second saw. */
const picture = (sure: number, second: readonly string[] | null): PageWords => {
  const page = pageOfText(LINES)
  return {
    ...page,
    readBy: 'picture',
    words: page.words.map((word) => ({ ...word, confidence: sure })),
    secondWords: second && pageOfText(second).words,
  }
}
const proposed = async (page: PageWords) => proposePermits([await associated(page)], QUILLBACK)[0]!

describe('what is read from a picture', () => {
  test('is marked where both readers see the same', async () => {
    const { fields, unsure } = await proposed(picture(0.98, LINES))
    expect(fields.find(({ pointer }) => pointer === '/components/0/capacity')).toMatchObject({
      value: '1,000 gal',
      readAlike: true,
    })
    expect(unsure).toEqual([])
  })
  test('stays empty where it is too faint, with the place on the page', async () => {
    const { fields, unsure, entry, missing } = await proposed(picture(0.2, null))
    expect(fields.map(({ pointer }) => pointer)).not.toContain('/bedrooms')
    expect(entry.bedrooms).toBeUndefined()
    expect(missing).toContain('/number')
    const bedrooms = unsure.find(({ pointer }) => pointer === '/bedrooms')!
    expect(bedrooms).toMatchObject({ value: 3, page: 1 })
    expect(bedrooms.confidence).toBeLessThan(LEAST_PROPOSED)
    expect(bedrooms.box.y).toBeCloseTo(0.05 + 0.018, 3)
  })
  test('is less believed where the second reader sees another figure, which is then told', async () => {
    const other = LINES.map((line) => line.replace('1,000', '1,600'))
    const { fields, unsure } = await proposed(picture(0.98, other))
    const capacity = [...fields, ...unsure].find(({ pointer }) => pointer === '/components/0/capacity')!
    expect(capacity.readAlike).toBe(false)
    expect(capacity.confidence).toBeLessThan(0.9)
    expect(capacity.doubts.find(({ kind }) => kind === 'readers-differ')?.readings).toEqual(['1,600 gal'])
  })
})

test('the weights of the text PDFs stay as they are', async () => {
  const { fields, unsure } = await proposed(pageOfText(LINES))
  expect(unsure).toEqual([])
  expect(fields.every(({ readAlike }) => readAlike === null)).toBe(true)
})

test('confidence rises with the weight, and two readers are never believed less than one', () => {
  const field = (confidence: number, readAlike: boolean): ProposedField => ({
    pointer: '/bedrooms',
    value: 3,
    words: '3',
    page: 1,
    box: { x: 0, y: 0, w: 0.1, h: 0.1 },
    confidence,
    how: 'label',
    why: null,
    readAlike,
    doubts: [],
  })
  const share = (confidence: number, readAlike: boolean) =>
    calibrated(field(confidence, readAlike), AS_EVERYWHERE).confidence
  const weight = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(weight, weight, fc.boolean(), (a, b, alike) => {
      const [less, more] = a < b ? [a, b] : [b, a]
      expect(share(less, alike)).toBeLessThanOrEqual(share(more, alike) + 1e-12)
      expect(share(a, true)).toBeGreaterThan(share(a * SECOND.nothing, false))
      expect(share(a, alike)).toBeLessThan(1)
    }),
  )
})
