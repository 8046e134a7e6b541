import { describe, expect, test } from 'vitest'
import { checkedParcel, parcelCandidates } from '../../src/reading/check/parcel.ts'
import type { ProposedPermit } from '../../src/reading/proposal.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { linkedText } from './associated-page.ts'

const read = async (...lines: string[]) => proposePermits([await linkedText(lines)], QUILLBACK)[0]!
const field = (proposal: ProposedPermit, pointer: string) =>
  proposal.fields.find((known) => known.pointer === pointer)!

describe('values that cannot all be true', () => {
  test('a capacity that length by width by depth does not give is shown with the reading that would pass', async () => {
    // 8.5 x 4 x 4 ft is 136 ft3, 1,017 gal at 7.48052 gal/ft3.
    const proposal = await read(`Septic tank: 1,600 gal concrete, 8'-6" x 4'-0" x 4'-0" L.D.`)
    const { doubts, confidence } = field(proposal, '/components/0/capacity')
    expect(doubts).toEqual([
      {
        kind: 'arithmetic',
        says: 'length by width by liquid depth does not give the capacity',
        readings: expect.arrayContaining(['1,000 gal']),
      },
    ])
    expect(confidence).toBeLessThan(0.7)
  })
  test('the same tank with its capacity read right raises no doubt', async () => {
    const proposal = await read(`Septic tank: 1,000 gal concrete, 8'-6" x 4'-0" x 4'-0" L.D.`)
    expect(proposal.fields.flatMap(({ doubts }) => doubts)).toEqual([])
  })
  test('Virginia Table 5.3 (12VAC5-610-815): tanks built to it raise no doubt', async () => {
    for (const [nominal, l, w] of [
      [750, 7, '3.5'],
      [900, 8, 4],
      [1200, 9, '4.5'],
    ])
      expect(
        (await read(`Septic tank: ${nominal} gal, ${l} ft x ${w} ft x 4 ft liquid depth`)).fields.flatMap(
          ({ doubts }) => doubts,
        ),
      ).toEqual([])
  })
  test('an approval before the issue', async () => {
    const proposal = await read('Date issued: 5/3/1978', 'Final approval: 8/9/1973')
    expect(field(proposal, '/approvedOn').doubts[0]).toMatchObject({
      kind: 'date-order',
      readings: ['8/9/1978'],
    })
  })
  test('ties that make no triangle with the baseline', async () => {
    const proposal = await read(
      `SEPTIC TANK  A-13'-0" B-31'-0"`,
      `A = NE corner of house  B = NW corner of house  A to B 50'-0"`,
    )
    const { doubts } = field(proposal, '/components/0/tie/b')
    expect(doubts[0]).toMatchObject({ kind: 'arithmetic', readings: expect.arrayContaining([`37'-0"`]) })
  })
  test('a flow that does not fit the bedrooms', async () => {
    expect(
      field(await read('Bedrooms: 3', 'Design flow: 1450 gpd'), '/designFlowGpd').doubts[0],
    ).toMatchObject({
      kind: 'arithmetic',
      readings: [],
    })
  })
  test('an area that the lines do not make: 762 sq ft in 3-ft trench is 254 ft (Orono, Minnesota, published)', async () => {
    expect(
      (await read('Trenches: 2 @ 127 ft x 3 ft', 'Absorption area: 762 sq ft')).fields.flatMap(
        ({ doubts }) => doubts,
      ),
    ).toEqual([])
    const right = await read('Trenches: 2 @ 127 ft x 3 ft', 'Absorption area: 762 sq ft')
    expect(right.entry.components).toMatchObject([{ kind: 'trench', area: 762 }])
    const wrong = await read('Trenches: 2 @ 127 ft x 3 ft', 'Absorption area: 1762 sq ft')
    expect(field(wrong, '/components/0/length').doubts[0]?.kind).toBe('arithmetic')
  })
})

describe('parcel numbers that exist', () => {
  test('one that the county has is surer, one that it has not is shown with the one it has', async () => {
    const proposal = await read('Parcel 07-0412-0037')
    expect(parcelCandidates(proposal)).toContain('07-0412-0031')
    const sure = checkedParcel(proposal, new Set(['07-0412-0037'])).parcelNumber!
    expect(sure.confidence).toBeGreaterThanOrEqual(proposal.parcelNumber!.confidence)
    const doubtful = checkedParcel(proposal, new Set(['07-0412-0031'])).parcelNumber!
    expect(doubtful.doubts.at(-1)).toMatchObject({ kind: 'not-in-county', readings: ['07-0412-0031'] })
    expect(doubtful.confidence).toBeLessThan(0.5)
  })
})
