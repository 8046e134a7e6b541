import { describe, expect, test } from 'vitest'
import { proposePermits } from '../../src/reading/propose.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { linkedText } from './associated-page.ts'

const read = async (...lines: string[]) => proposePermits([await linkedText(lines)], QUILLBACK)[0]!

/** Ways of writing are common practice of the trade; the values are what a person would type from them. */
describe('a tank in the words of different papers', () => {
  test.each([
    [
      'SEPTIC TANK: 1000 GAL. CONC. 8\'-6" X 4\'-0" X 4\'-0" L.D.',
      {
        capacity: '1000 gal',
        material: 'concrete',
        length: '8\'-6"',
        width: '4\'-0"',
        liquidDepth: '4\'-0"',
      },
    ],
    [
      'Septic tank size: 1,250 gallons, two compartment, fiberglass',
      { capacity: '1,250 gal', compartments: 2, material: 'fiberglass' },
    ],
    [
      'A 1,500 gallon two-compartment precast concrete septic tank was set.',
      { capacity: '1,500 gal', compartments: 2, material: 'concrete' },
    ],
    [
      'Tank capacity (gal): 1200   Tank material: plastic',
      { capacity: '1200 gal', material: 'polyethylene' },
    ],
    ['Septic tank 1000 gal  cover over tank 18"', { capacity: '1000 gal', depthToTop: '18 in' }],
  ])('%s', async (line, expected) => {
    const tank = (await read(line)).entry.components.find(({ kind }) => kind === 'tank')
    expect(tank).toMatchObject(expected)
  })
})

describe('a field in the words of different papers', () => {
  test.each([
    [
      "2 SEEPAGE PITS 6' DIA. X 10' BELOW INLET",
      'seepage-pit',
      { count: 2, diameter: '6 ft', effectiveDepth: '10 ft' },
    ],
    [
      'Leach trenches: 3 @ 60 ft x 24 in wide, 18 in rock below pipe',
      'trench',
      { count: 3, length: '60 ft', width: '24 in', effectiveDepth: '18 in' },
    ],
    [
      'Two dry wells, each 5 feet in diameter and 8 feet deep, were dug.',
      'seepage-pit',
      { count: 2, diameter: '5 ft', effectiveDepth: '8 ft' },
    ],
    [
      "Absorption bed 40' x 18' with 12\" of gravel below the pipe",
      'bed',
      { length: '40 ft', width: '18 ft', effectiveDepth: '12 in' },
    ],
    [
      'Number of trenches: 4   Total length: 240 ft   Trench width: 36"',
      'trench',
      { count: 4, length: '60 ft', width: '36 in' },
    ],
    ['DRAINFIELD  4 LINES  LENGTH EACH 75 FT', 'trench', { length: '75 ft' }],
  ])('%s', async (line, kind, expected) => {
    expect((await read(line)).entry.components.find((component) => component.kind === kind)).toMatchObject(
      expected,
    )
  })
})

describe('ties and the corners they run from', () => {
  test.each([
    [`SEPTIC TANK  A-23'-6" B-31'-0"`],
    [`Septic tank: A 23'-6", B 31'-0"`],
    [`Septic tank is 23'-6" from A and 31'-0" from B`],
    [`Septic tank  ties  A = 23'-6"  B = 31'-0"`],
    [`Tank: 23'-6" from corner A, 31'-0" from corner B`],
  ])('%s', async (line) => {
    expect((await read(line)).entry.components[0]?.tie).toEqual({ a: `23'-6"`, b: `31'-0"` })
  })

  test('a tie without corners asks for them', async () => {
    expect((await read(`SEPTIC TANK  A-23'-6" B-31'-0"`)).missing).toEqual(
      expect.arrayContaining(['/reference/a', '/reference/b']),
    )
  })

  test('both corners of one wall name the wall', async () => {
    const { entry } = await read(`A = NE corner of rear wall, B = NW corner of rear wall, A to B 40'-0"`)
    expect(entry.reference).toEqual({
      a: 'NE corner of rear wall',
      b: 'NW corner of rear wall',
      baseline: `40'-0"`,
      wall: 'rear',
    })
  })
})

describe('ticks', () => {
  test.each([
    ['( ) New  (X) Repair  ( ) Alteration', 'repair'],
    ['[ ] New [ ] Repair [x] Alteration', 'alteration'],
    ['New [X]   Repair [ ]   Alteration [ ]', 'new'],
    ['☐ New ☒ Repair ☐ Abandonment', 'repair'],
    ['X New      Repair      Alteration', 'new'],
    ['Type of permit:   New    X Repair', 'repair'],
  ])('%s', async (line, kind) => {
    expect((await read(line)).entry.kind).toBe(kind)
  })

  test('choices that are not ticked put nothing in the ground', async () => {
    const { entry } = await read(
      'DISPOSAL FIELD',
      '( ) Trenches  (X) Bed  ( ) Seepage pits',
      'Length 40 ft  Width 20 ft',
    )
    expect(entry.components).toHaveLength(1)
    expect(entry.components[0]).toMatchObject({ kind: 'bed', length: '40 ft', width: '20 ft' })
  })
})

describe('what is asked for and not wanted', () => {
  test('the size a rule asks for is not the size put in', async () => {
    const { entry } = await read('Tank capacity required: 1,000 gal', 'Tank capacity installed: 1,250 gal')
    expect(entry.components[0]).toMatchObject({ kind: 'tank', capacity: '1,250 gal' })
  })
  test.each([
    ['Well depth: 120 ft', 'Septic tank liquid depth: 4 ft'],
    ['Distance to well: 100 ft', 'Septic tank liquid depth: 4 ft'],
    ['Lot size: 120 ft x 200 ft', 'Septic tank liquid depth: 4 ft'],
  ])('%s', async (decoy, wanted) => {
    const { entry } = await read(decoy, wanted)
    expect(entry.components).toEqual([{ tag: 'septic tank', kind: 'tank', liquidDepth: '4 ft' }])
  })
  test('dates of other things are not the dates of the permit', async () => {
    const { entry } = await read(
      'Date received: 4/1/1978',
      'Date issued: 5/3/1978',
      'Expires: 5/3/1979',
      'Final approval: 8/9/1978',
    )
    expect(entry).toMatchObject({ issuedOn: '5/3/1978', approvedOn: '8/9/1978' })
  })
  test('rules printed on a form say nothing of the system', async () => {
    const { entry } = await read(
      'The septic tank shall be at least 1,000 gallons and not less than 50 ft from a well.',
    )
    expect(entry.components).toEqual([])
  })
})

test('several tanks keep their numbers', async () => {
  const { entry } = await read('Tank 1: 1,000 gal concrete', 'Tank 2: 500 gal concrete')
  expect(entry.components).toEqual([
    { tag: 'septic tank 1', kind: 'tank', capacity: '1,000 gal', material: 'concrete' },
    { tag: 'septic tank 2', kind: 'tank', capacity: '500 gal', material: 'concrete' },
  ])
})
