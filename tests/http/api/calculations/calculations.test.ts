import { describe, expect, test } from 'vitest'
import type { Step } from '../../../../src/measure/step.ts'
import { redo } from '../../../corpus/redo.ts'
import { testApp } from '../../../support/app.ts'

const { ask } = await testApp()
/** Every working that an answer of this file printed. */
const workings: { readonly which: string; readonly step: Step }[] = []
const calculate = async (which: string, body: object) => {
  const answer = await ask('agent', { method: 'POST', url: `/v1/calculations/${which}`, body })
  if (answer.status === 200) {
    const { steps, rules } = answer.body as { steps?: Step[]; rules?: { steps: Step[] }[] }
    const all = steps ?? rules?.flatMap((rule) => rule.steps) ?? []
    workings.push(...all.map((step) => ({ which, step })))
  }
  return answer
}
const faults = async (which: string, body: object) => {
  const answer = await calculate(which, body)
  expect(answer.status).toBe(422)
  return (answer.body.errors as { pointer: string; message: string }[]).map(({ pointer }) => pointer)
}

describe('tank capacity', () => {
  // 8 ft × 4 ft × 4 ft = 128 cu ft; × 1728 ÷ 231 (exact) = 957.506 gal.
  const box = { kind: 'rectangular', length: '8\'-0"', width: '48 in', liquidDepth: '4 ft' }

  test('of a box, in any way of writing a length', async () => {
    const { status, body } = await calculate('tank-capacity', { shape: box })
    expect(status).toBe(200)
    expect(body.capacityGal).toBeCloseTo((128 * 1728) / 231, 9)
    expect(body.expandedUncertaintyGal).toBeGreaterThan(0)
    expect(body.galPerInch).toBeCloseTo((32 * 1728) / 231 / 12, 9)
    expect(body.steps.at(0).numbers).toContain('8')
    const shares = body.budget.reduce(
      (sum: number, it: { percentOfVariance: number }) => sum + it.percentOfVariance,
      0,
    )
    expect(shares).toBeCloseTo(100, 6)
    const metric = await calculate('tank-capacity', {
      shape: { kind: 'rectangular', length: '2.4384 m', width: { ft: 4 }, liquidDepth: { in: 48 } },
    })
    expect(metric.body.capacityGal).toBeCloseTo(body.capacityGal, 9)
  })

  test('a rough method costs certainty, and the answer says what to measure again', async () => {
    const rough = { ...box, length: { length: '8\'-0"', method: 'by-eye' } }
    const { body } = await calculate('tank-capacity', { shape: rough })
    const sure = (await calculate('tank-capacity', { shape: box })).body
    expect(body.expandedUncertaintyGal).toBeGreaterThan(5 * sure.expandedUncertaintyGal)
    expect(body.better[0].what).toContain('inside length')
    expect(body.better[0].expandedUncertaintyAfterGal).toBeLessThan(body.expandedUncertaintyGal)
  })

  test('walls come off what was taped along the outside', async () => {
    const outside = { method: 'outside-tape' }
    const shape = {
      ...box,
      length: { length: '8\'-6"', ...outside },
      width: { length: '4\'-6"', ...outside },
    }
    const { body } = await calculate('tank-capacity', { shape, wallThickness: '3 in' })
    expect(body.capacityGal).toBeCloseTo((128 * 1728) / 231, 9)
  })

  test('tanks in series add up', async () => {
    const { body } = await calculate('tank-capacity', { shape: { kind: 'in-series', tanks: [box, box] } })
    expect(body.capacityGal).toBeCloseTo((2 * 128 * 1728) / 231, 9)
  })

  test('every fault is told at once, with its pointer', async () => {
    expect(
      await faults('tank-capacity', { shape: { kind: 'rectangular', length: '8', width: 'wide' } }),
    ).toEqual(['/shape/length', '/shape/width', '/shape/liquidDepth'])
    expect(await faults('tank-capacity', { shape: { kind: 'box' } })).toEqual(['/shape/kind'])
    expect(
      await faults('tank-capacity', {
        shape: { ...box, insideHeight: '3 ft' },
      }),
    ).toEqual(['/shape/liquidDepth'])
  })
})

describe('code capacity', () => {
  const of = async (body: object) => (await calculate('code-capacity', { rules: 'quillback', ...body })).body

  test('of 1974 and of today differ, each with its source', async () => {
    const then = await of({ on: '1974-06-20', bedrooms: 3 })
    const now = await of({ on: '2020-01-01', bedrooms: 3 })
    expect([then.state, then.pack]).toEqual(['in-force', 'public-health-service/tanks'])
    expect([now.requiredGal, now.pack]).toEqual([1000, 'quillback/code'])
    expect(now.citations[0].section).toBe('9.12, Table 1')
    expect(now.steps.length).toBeGreaterThan(0)
  })

  test('a building that is no dwelling goes by its flow', async () => {
    const restaurant = { rules: 'tennessee', on: '2020-01-01', use: 'other' }
    expect((await of({ ...restaurant, flowGpd: 2000 })).requiredGal).toBe(2625)
    expect(await faults('code-capacity', restaurant)).toEqual(['/flowGpd'])
  })

  test('before there was a code it says so', async () => {
    const then = await of({ on: '1958-05-01', bedrooms: 3 })
    expect(then.requiredGal).toBeNull()
    expect(then.silence).toMatch(/1967-01-01/)
  })

  test('what the table goes by is asked for', async () => {
    expect(await faults('code-capacity', { rules: 'quillback', on: '2020-01-01' })).toEqual(['/bedrooms'])
    expect(await faults('code-capacity', { rules: 'nowhere', bedrooms: 3 })).toEqual(['/rules'])
  })
})

describe('tie location', () => {
  // A 3-4-5 triangle: corners 6 ft apart, both ties 5 ft, so the place is 3 ft along and 4 ft off.
  const ties = { baseline: '6\'-0"', a: '5\'-0"', b: '5\'-0"' }

  test('with the side said: one place and the ground that holds it', async () => {
    const { body } = await calculate('tie-location', { ...ties, side: 'away' })
    expect(body.places).toHaveLength(1)
    expect(body.places[0].xFt).toBeCloseTo(3, 9)
    expect(body.places[0].yFt).toBeCloseTo(4, 9)
    const { region } = body.places[0]
    expect(region.says).toMatch(/^a (?:spot|strip) about /)
    expect(region.lengthFt).toBeGreaterThanOrEqual(region.widthFt)
    expect(region.outline.length).toBeGreaterThan(90)
  })

  test('further ties and a satellite fix take part in one estimate, and a wrong one is not blamed by guess', async () => {
    // A house 6 by 5; the tie from C is 2 ft long. Without A the other two do not meet on the open side; either of them explains it.
    const more = [{ corner: 'C', xFt: 6, yFt: -5, tie: { ft: Math.hypot(3, 9) + 2 } }]
    const { body } = await calculate('tie-location', { ...ties, side: 'away', more })
    expect(body.suspects).toEqual(['B', 'C'])
    expect(body.leftover).toHaveLength(3)
    const satellite = {
      lat: 41.5,
      lon: -90.125,
      accuracyM: 3,
      cornerA: { lat: 41.5, lon: -90.12501 },
      bearingDeg: 90,
    }
    const joint = (await calculate('tie-location', { ...ties, satellite })).body
    expect([joint.leftover.length, joint.suspects]).toEqual([3, []])
    const elsewhere = await calculate('tie-location', { ...ties, satellite: { ...satellite, lat: -41.5 } })
    expect([elsewhere.status, elsewhere.body.errors[0]]).toEqual([
      422,
      {
        in: 'body',
        pointer: '/satellite',
        message: expect.stringMatching(/^lies [\d,]+ miles from corner A/),
      },
    ])
  })

  test('with no side said: two places, mirrored', async () => {
    const { places } = (await calculate('tie-location', ties)).body
    expect(places.map((it: { side: string; yFt: number }) => [it.side, Math.round(it.yFt)])).toEqual([
      ['away', 4],
      ['toward', -4],
    ])
  })

  test('a length so near zero that nothing measures it is bad input, and no answer of infinite width', async () => {
    const { status, body } = await calculate('tie-location', { ...ties, baseline: { ft: 9e-228 } })
    expect([status, body.errors]).toEqual([
      422,
      [
        {
          in: 'body',
          pointer: '/baseline/ft',
          message: 'is nearer to zero than anything that is measured',
        },
      ],
    ])
  })

  test('ties that can’t meet are bad input, with what would mend them', async () => {
    const apart = await calculate('tie-location', { baseline: '36 ft', a: '10 ft', b: '60 ft' })
    expect(apart.status).toBe(422)
    expect(apart.body.errors[0].message).toMatch(/differ by/)
  })
})

describe('absorption area', () => {
  test('of two pits by their sidewall', async () => {
    // 2 × π × 8 × 6 = 301.59 sq ft
    const { body } = await calculate('absorption-area', {
      shape: { kind: 'pits', diameter: '8 ft', effectiveDepth: '6 ft', count: 2 },
      counts: 'sidewall',
    })
    expect(body.providedSqFt).toBeCloseTo(2 * Math.PI * 8 * 6, 6)
    expect(body.required).toBeNull()
  })

  test('three pits count by their sidewall, with and without a rule, as in a reconciliation', async () => {
    // 3 × π × 6 × 10 = 565.5 sq ft; by their bottoms they would be 84.8.
    const shape = { kind: 'pits', diameter: '6 ft', effectiveDepth: '10 ft', count: 3 }
    const alone = (await calculate('absorption-area', { shape })).body
    const required = { rules: 'quillback', on: '2020-01-01', percRateMpi: 10, bedrooms: 3, flowGpd: 450 }
    const ruled = (await calculate('absorption-area', { shape, required })).body
    expect([alone.counts, ruled.counts]).toEqual(['sidewall', 'sidewall'])
    for (const { providedSqFt } of [alone, ruled]) expect(providedSqFt).toBeCloseTo(3 * Math.PI * 6 * 10, 6)
  })

  test('against what the table of today asks', async () => {
    // 450 gpd ÷ 0.8 gpd per sq ft × 1.25 for a bed = 703.125 sq ft (Quillback County Code 9.20, invented).
    const { body } = await calculate('absorption-area', {
      shape: { kind: 'bed', length: '20 ft', width: '20 ft' },
      required: { rules: 'quillback', on: '2020-01-01', percRateMpi: 10, bedrooms: 3, flowGpd: 450 },
    })
    expect([body.providedSqFt, body.counts]).toEqual([400, 'bottom'])
    expect(body.required.sqFt).toBeCloseTo(703.125, 6)
    expect(body.required.verdict).toBe('falls-short')
  })

  test('South Dakota takes 20 percent off for a foot of gravel below the pipe', async () => {
    const shape = { kind: 'trenches', width: '3 ft', lengths: ['100 ft', '100 ft'] }
    const required = { rules: 'south-dakota', on: '2020-01-01', percRateMpi: 36, flowGpd: 1000 }
    const deep = await calculate('absorption-area', { shape: { ...shape, effectiveDepth: '1 ft' }, required })
    expect(deep.body.required.sqFt).toBeCloseTo(960, 6)
    const unknown = await calculate('absorption-area', { shape, required })
    expect(unknown.body.required.silence).toContain('depth of gravel')
  })

  test('a wall that counts has to be measured', async () => {
    expect(
      await faults('absorption-area', {
        shape: { kind: 'trenches', width: '2 ft', lengths: ['60 ft'] },
        counts: 'sidewall',
      }),
    ).toEqual(['/shape/effectiveDepth'])
  })
})

describe('solids', () => {
  test('each rule answers under its own name', async () => {
    const { body } = await calculate('solids', {
      rules: 'quillback',
      readings: {
        liquidDepth: '48 in',
        sludgeThickness: '30 in',
        scumThickness: '10 in',
        scumBottomBelowLiquid: '8 in',
        outletBottomBelowLiquid: '18 in',
      },
      nominalGal: 1000,
    })
    expect(body.rules.length).toBeGreaterThan(1)
    expect(body.rules.map((it: { verdict: string }) => it.verdict)).toContain('due')
    for (const rule of body.rules) expect(rule.citations.length).toBeGreaterThan(0)
  })

  test('what was not read is lacking, not none', async () => {
    const { body } = await calculate('solids', { rules: 'quillback', readings: { liquidDepth: '48 in' } })
    const verdicts = new Set(body.rules.map((it: { verdict: string }) => it.verdict))
    expect([...verdicts]).toEqual(['cannot-tell'])
  })

  test('more sludge than liquid is bad input', async () => {
    expect(
      await faults('solids', {
        rules: 'quillback',
        readings: { liquidDepth: '24 in', sludgeThickness: '40 in' },
      }),
    ).toEqual(['/readings/sludgeThickness'])
  })
})

// Last: it reads what the tests above were answered.
test('every working of every answer above can be redone from what it prints', () => {
  const faults = workings.flatMap(({ which, step }) => {
    const answer = redo(step)
    return typeof answer === 'string' ? [] : [`${which}: ${JSON.stringify(step)} ${answer.fault}`]
  })
  expect(faults).toEqual([])
  expect(new Set(workings.map(({ which }) => which)).size).toBe(5)
  expect(workings.filter(({ step }) => redo(step) === 'redone').length).toBeGreaterThan(60)
})
