import { describe, expect, test } from 'vitest'
import { eastNorth } from '../../../src/geometry/position/frame.ts'
import { findingsEntry } from '../../../src/reading/entry/findings.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { redo } from '../../corpus/redo.ts'
import { asked, outcomesOf, permit } from '../asked.ts'

const reference = { a: 'NW corner', b: 'NE corner', baseline: '40 ft', wall: 'rear', bearingDeg: 90 } as const
const A = { lat: 41.5, lon: -90.125 }
/** So many feet along the wall from A and off it: B lies due east, so off the wall is south. */
function at(x: number, y: number, radiusFt: number) {
  let { lat, lon } = A
  for (let i = 0; i < 6; i++) {
    const off = eastNorth({ latDeg: A.lat, lonDeg: A.lon }, { latDeg: lat, lonDeg: lon })
    lat += (-y - off.north) / 364_000
    lon += (x - off.east) / 273_000
  }
  return { lat, lon, radiusFt }
}
const corner = { ...A, radiusFt: 0.2 }

// The tank is recorded 50 ft from either end of a 40 ft wall: at (20, 45.83).
const file = [
  permit(
    [{ tag: 'tank', kind: 'tank', capacity: '1,000 gal', tie: { a: '50 ft', b: '50 ft', side: 'away' } }],
    {
      number: '92-1',
      issuedOn: '1992-03-01',
      approvedOn: '1992-05-01',
      reference,
    },
  ),
]
const position = (tank: object, house: object = { cornerA: corner }) =>
  outcomesOf(
    asked(file, [{ key: '92-1/tank', label: 'tank', kind: 'tank', outcome: 'found', ...tank } as never], {
      reference,
      ...house,
    } as never),
    'position',
  )[0]!
const tie = { a: '50 ft', b: '50 ft', side: 'away' }
const exact = (outcome: ReturnType<typeof position>) =>
  'distance' in outcome.reason ? (outcome.reason.distance as { value: number; U: number }) : null

describe('a satellite fix', () => {
  test('alone places a part, where corner A has one and the wall its bearing', () => {
    expect(position({ fix: at(20, 45.83, 3) })).toMatchObject({ verdict: 'agrees' })
    const far = position({ fix: at(20, 85, 3) })
    expect(far).toMatchObject({ verdict: 'differs', raises: 'position-differs' })
    expect(exact(far)!.value).toBeCloseTo(39.2, 0)
  })

  test('of both corners needs no compass', () => {
    const { bearingDeg: _, ...plain } = reference
    const house = { reference: plain, cornerA: corner, cornerB: at(40, 0, 0.2) }
    expect(position({ fix: at(20, 85, 1) }, house)).toMatchObject({ verdict: 'differs' })
  })

  test('without a corner’s tells nothing, and says what is missing', () => {
    const outcome = position({ fix: at(20, 45.83, 3) }, {})
    expect(outcome.verdict).toBe('cannot-tell')
    expect(reasonWords(outcome)).toContain('none of corner A')
  })

  test('and ties are one estimate: a rough fix moves it little, a sharp one as much as the ties', () => {
    const [ties, rough, sharp] = [
      position({ tie: { ...tie, a: '51 ft', b: '51 ft' } }),
      position({ tie: { ...tie, a: '51 ft', b: '51 ft' }, fix: at(20, 45.83, 30) }),
      position({ tie: { ...tie, a: '51 ft', b: '51 ft' }, fix: at(20, 46.4, 0.2) }),
    ].map((it) => exact(it)!)
    expect(Math.abs(rough!.value - ties!.value)).toBeLessThan(0.02)
    expect(sharp!.value).toBeLessThan(ties!.value - 0.05)
  })

  test('that does not fit the ties is no place: it says which may be wrong', () => {
    const outcome = position({ tie, fix: at(20, 75, 1) })
    expect(outcome.verdict).toBe('cannot-tell')
    expect(reasonWords(outcome)).toMatch(
      /^the inspection’s ties to the tank and its satellite fix do not fit one place: .*must be wrong$/,
    )
  })

  test('miles from the corner’s is refused as it is typed, with what to look at', () => {
    const read = findingsEntry.safeParse({
      inspectedOn: '2026-05-19',
      cornerA: corner,
      components: [
        { label: 'tank', kind: 'tank', outcome: 'found', fix: { lat: 41.9, lon: -90.125, radiusFt: 10 } },
      ],
    })
    expect(read.error?.issues).toMatchObject([
      { path: ['components', 0, 'fix'], message: expect.stringMatching(/^lies 28 miles from corner A/) },
    ])
  })

  test('prints a working that can be redone', () => {
    const { steps } = position({ tie: { ...tie, a: '51 ft', b: '51 ft' }, fix: at(20, 46.4, 3) })
    expect(steps.map(redo).filter((it) => typeof it !== 'string')).toEqual([])
    expect(steps.length).toBeGreaterThan(12)
  })

  test('keeps its exhibits: the part’s, the corner’s, as the receiver told them', () => {
    const { exhibits } = position({ fix: at(20, 45.83, 3) })
    expect(exhibits.filter(({ thing }) => thing === 'fix' || thing === 'corner-fix')).toHaveLength(2)
  })
})
