import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { describeSitePlan } from '../../../src/brief/site-plan/describe.ts'
import { drawSitePlan } from '../../../src/brief/site-plan/draw.ts'
import { frameOf, WIDTH } from '../../../src/brief/site-plan/drawing/frame.ts'
import { overlap, placeLabels } from '../../../src/brief/site-plan/drawing/labels.ts'
import { PLANS } from './plans.ts'

const all = Object.entries(PLANS).map(([name, make]) => [name, make()] as const)
const { replaced, card, noSide, front } = PLANS

/** The texts of a drawing with their middles, as they are written. */
const texts = (svg: string) =>
  [
    ...svg.matchAll(
      /<text x="([\d.-]+)" y="([\d.-]+)" text-anchor="middle" fill="#263238" stroke[^>]*>([^<]*)</g,
    ),
  ].map(([, x, y, words]) => ({
    x: Number(x),
    y: Number(y),
    words: words!.replaceAll('&#39;', "'").replaceAll('&#34;', '"'),
  }))

describe.each(all)('the plan of %s', (_, plan) => {
  const svg = drawSitePlan(plan)

  test('no label lies over another, and none runs off the sheet', () => {
    const boxes = texts(svg).map(({ x, y, words }) => {
      const w = words.length * 13 * 0.52
      return { x: x - w / 2, y: y - 11, w, h: 13 }
    })
    expect(boxes.length).toBeGreaterThan(0)
    for (const [at, box] of boxes.entries()) {
      expect([box.x >= 0, box.x + box.w <= WIDTH]).toEqual([true, true])
      for (const other of boxes.slice(at + 1)) expect(overlap(box, other)).toBe(false)
    }
  })

  test('all that is drawn is said: each thing, who says so, each line, each setback', () => {
    const words = describeSitePlan(plan).join('\n').toLowerCase()
    for (const { label, by } of plan.marks) expect(words).toContain(`${label}, as ${by}`.toLowerCase())
    for (const { label } of plan.lines) expect(words).toContain(`${label}: `.toLowerCase())
    for (const { ft } of plan.rings) expect(words).toContain(`${ft} ft from it`)
    expect(svg).toContain(plan.reference.bearingDeg === null ? 'north not known' : '>N<')
  })

  test('recorded and found differ in form: the one open and dashed, the other filled', () => {
    const dashed = (svg.match(/fill="#ffffff" fill-rule="evenodd"[^>]*stroke-dasharray/g) ?? []).length
    const filled = (svg.match(/fill="#7a2e0e" fill-rule="evenodd"/g) ?? []).length
    const count = (by: string) => plan.marks.filter((mark) => mark.by === by).length
    // Each once more in the key.
    expect([dashed, filled]).toEqual([count('recorded') + 1, count('found') + 1])
  })

  test('it is to scale: the baseline and the bar measure what they say', () => {
    const { at, scale } = frameOf(plan)
    const [[ax, ay], [bx, by]] = [at(0, 0), at(plan.reference.baselineFt, 0)]
    expect(Math.hypot(bx - ax, by - ay) / scale).toBeCloseTo(plan.reference.baselineFt, 6)
    const [, from, to, ft] =
      /M([\d.]+) [\d.]+V[\d.]+H([\d.]+)V[\d.]+" fill="none" stroke="#263238" stroke-width="2"\/><text[^>]*>(\d+) ft/.exec(
        svg,
      )!
    expect((Number(to) - Number(from)) / scale).toBeCloseTo(Number(ft), 1)
  })
})

describe('what a plan shows', () => {
  test('a line replaced without a permit and one put in under a permit, each said to be so', () => {
    expect(texts(drawSitePlan(replaced())).map(({ words }) => words)).toEqual(
      expect.arrayContaining(['sewer replaced, no permit', 'new line, permit 94-7']),
    )
    const words = describeSitePlan(replaced()).join('\n')
    expect(words).toContain('Sewer: replaced (cast iron on record, PVC found), and no permit shows it')
    expect(words).toContain('New line: put in under permit 94-7 (vitrified clay before, PVC since)')
  })

  test('the setback that is short, with how far the thing is and what the rule of its day asks', () => {
    const [within] = card().within
    // By hand: from (7.9, 39.3) to (61.7, 51.0) are √(53.8² + 11.7²) ≈ 55.0 ft; the pit's edge is 4 ft nearer.
    expect(within?.distanceFt).toBeCloseTo(Math.hypot(53.75, 11.72) - 4, 0)
    expect(within).toMatchObject({ label: 'pit', well: 'well', ft: 100 })
    expect(texts(drawSitePlan(card())).map(({ words }) => words)).toContain(`51'-0", rule 100 ft`)
  })

  test('both places where no side is named, and no line to a place that is not known', () => {
    expect(noSide().marks.map(({ mirror }) => mirror)).toEqual([true, true])
    expect(texts(drawSitePlan(noSide()))).toHaveLength(2)
  })

  test('a thing fixed by satellite is told with its accuracy and not drawn', () => {
    expect(describeSitePlan(replaced()).at(-1)).toBe(
      `Second tank: a satellite fix, 41.50001, -88.20002, good to 16'-0" (95 %); the corners have none, so it is not drawn.`,
    )
  })

  test('where the front of the house is, for a front and for a rear wall', () => {
    expect(drawSitePlan(card())).toContain('front ↑')
    const svg = drawSitePlan(front())
    expect(svg).toContain('rear ↓')
    // Turned half round, A is on the right.
    const { at } = frameOf(front())
    expect(at(0, 0)[0]).toBeGreaterThan(at(30, 0)[0])
  })

  test('one name for one thing: what the inspector calls otherwise is drawn under the record’s name', () => {
    expect(replaced().marks.map(({ label }) => label)).not.toContain('the pool')
  })
})

test('labels keep apart wherever the things are, as long as there is room', () => {
  const place = fc.record({ x: fc.integer({ min: 60, max: 420 }), y: fc.integer({ min: 60, max: 420 }) })
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 8 }), (places) => {
      const placed = placeLabels(
        places.map((spot) => ({ ...spot, words: 'pit (found)', clear: 13 })),
        [],
        600,
      )
      for (const [at, { box }] of placed.entries())
        for (const other of placed.slice(at + 1)) expect(overlap(box, other.box)).toBe(false)
    }),
  )
})
