import { describe, expect, test } from 'vitest'
import { inspectionBrief } from '../../src/brief/inspection-brief.ts'
import { bringWords } from '../../src/words/bring.ts'
import { parcelOfTwelve } from '../bench/parcel-of-twelve.ts'
import { book, inputOf, permit } from '../reconcile/asked.ts'

const reference = { a: 'NW corner', b: 'NE corner', baseline: '40 ft', wall: 'rear' } as const
const card = permit(
  [
    {
      tag: 'tank 1',
      kind: 'tank',
      capacity: '1,000 gal',
      material: 'steel',
      tie: { a: '30 ft', b: '35 ft' },
    },
    { tag: 'pit 1', kind: 'seepage-pit', diameter: '6 ft', effectiveDepth: '8 ft' },
  ],
  { reference, unreadable: [{ pointer: '/components/1/count', note: 'blotted' }] },
)
const brief = inspectionBrief(inputOf([card], null))

describe('the brief of an inspection', () => {
  test('the record line by line, each with its source, the unreadable said to be so', () => {
    expect(brief.recorded).toContainEqual(
      expect.objectContaining({
        component: '88-1/tank 1',
        what: 'capacity',
        says: '1,000 gal',
        sureness: 'confirmed',
      }),
    )
    expect(brief.recorded).toContainEqual(
      expect.objectContaining({ what: 'how many alike', sureness: 'unreadable', says: 'blotted' }),
    )
    for (const { origins } of brief.recorded) expect(origins.length).toBeGreaterThan(0)
  })

  test('expectations stand apart, each with its citation', () => {
    const recorded = new Set(brief.recorded.map(({ says }) => says))
    expect(brief.expected.length).toBeGreaterThan(3)
    for (const { says, citations } of brief.expected) {
      expect(recorded.has(says)).toBe(false)
      expect(citations.length).toBeGreaterThan(0)
    }
    expect(brief.expected.some(({ says }) => says.includes('10 to 20 ft from the house'))).toBe(true)
  })

  test('with no side named the plan has two places for the tank, in the drawing and in words', () => {
    expect(brief.whereToLook.plan?.marks.filter(({ mirror }) => mirror)).toHaveLength(2)
    expect(brief.whereToLook.svg?.match(/one of two/g)?.length).toBeGreaterThanOrEqual(2)
    expect(brief.whereToLook.words.filter((line) => line.includes('One of two places'))).toHaveLength(2)
  })

  test('what the papers say in words is told as it stands there, with the paper: landmarks, the drive', () => {
    const noted = permit([{ tag: 'pit', kind: 'seepage-pit', note: 'beyond the drive' }], {
      remarks: 'Drive along the left side.',
    })
    const repair = permit([{ tag: 'line', kind: 'effluent-line', note: 'under the walk' }], {
      number: '94-7',
      approvedOn: '1994-05-01',
    })
    expect(inspectionBrief(inputOf([noted, repair], null)).remarks).toEqual([
      { permit: '88-1', about: null, says: 'Drive along the left side.' },
      { permit: '88-1', about: 'pit', says: 'beyond the drive' },
      { permit: '94-7', about: 'line', says: 'under the walk' },
    ])
  })

  test('names in the drawing are text, never markup', () => {
    const nasty = permit(
      [{ tag: '<script>alert(1)</script>', kind: 'tank', tie: { a: '30 ft', b: '35 ft' } }],
      { reference },
    )
    expect(inspectionBrief(inputOf([nasty], null)).whereToLook.svg).not.toContain('<script')
  })

  test('measurements are ranked by how many questions each decides', () => {
    const weights = brief.measurements.map(({ weight }) => weight)
    expect(weights).toEqual(weights.toSorted((a, b) => b - a))
    expect(brief.measurements[0]?.what).toBe(
      'tank 1: liquid depth, floor to outlet invert, wherever the liquid stands',
    )
    expect(brief.measurements[0]?.settles).toContain('Does the tank hold what the record says?')
  })

  test('what to bring follows the record', () => {
    const things = brief.bring.map(bringWords).map(({ what }) => what)
    expect(things).toContain('a tape of at least 50 ft')
    expect(things).toContain('boards to stand on beside the tank')
  })

  test('the usual cautions and the deference are always there', () => {
    const said = brief.cautions.map(({ says }) => says).join(' ')
    for (const word of [
      'Never enter',
      'smell',
      'cover',
      '811',
      'not marked',
      'collapse',
      'electricity',
      'disease',
    ]) {
      expect(said).toContain(word)
    }
    expect(brief.deference).toContain('licensed practice')
    expect(inspectionBrief(inputOf([], null)).whereToLook.words[0]).toContain('follow it with a camera')
  })

  test('a full parcel has a brief of its own', () => {
    expect(inspectionBrief({ ...parcelOfTwelve, book }).measurements.length).toBeGreaterThan(10)
  })
})
