import { describe, expect, test } from 'vitest'
import { itemOf } from '../../../src/reconcile/status.ts'
import { itemWords } from '../../../src/words/agent/status.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, kindsOf, outcomesOf, permit } from '../asked.ts'

const CLAY = permit([
  { tag: 'line', kind: 'effluent-line', material: 'vitrified-clay', pipeDiameter: '4 in', length: '60 ft' },
])
const REPAIR = permit(
  [
    {
      tag: 'line',
      kind: 'effluent-line',
      action: 'replace',
      measuredFrom: 'tank',
      segments: [{ from: '31 ft', to: '60 ft', material: 'pvc' }],
    },
  ],
  { number: '09-R-3', kind: 'repair', issuedOn: '2009-05-01', approvedOn: '2009-06-01' },
)
const line = (more: object) =>
  ({
    key: '88-1/line',
    label: 'line',
    kind: 'effluent-line',
    outcome: 'found',
    measuredFrom: 'tank',
    ...more,
  }) as never
const HALVES = [
  { from: '0 ft', to: '31 ft', material: 'vitrified-clay' },
  { from: '31 ft', to: '60 ft', material: 'pvc' },
]
const says = (answer: ReturnType<typeof asked>) =>
  outcomesOf(answer, 'line-stretches').map((outcome) => reasonWords(outcome))

describe('one line of two stretches', () => {
  test('is no second line, and says from where to where it was laid anew', () => {
    const answer = asked([CLAY], [line({ segments: HALVES })])
    expect(kindsOf(answer)).toEqual(['line-replaced-without-permit'])
    expect(says(answer)).toEqual([
      'the line: 31 to 60 ft from the tank the record has vitrified clay, the inspection found PVC; no approved permit shows the change',
    ])
    const [difference] = answer.discrepancies.filter(({ kind }) => kind === 'line-replaced-without-permit')
    expect(itemWords(itemOf({ discrepancy: difference!, decided: null }), 'en').says).toBe(
      'Part of the line to the drainfield was replaced. It lies 31 to 60 feet from the tank. The county has no permit for that work.',
    )
    expect(itemWords(itemOf({ discrepancy: difference!, decided: null }), 'es').says).toMatch(
      /de 31 a 60 pies desde el tanque/,
    )
  })

  test('whose half a repair permit laid is as recorded, and the rest stays what it was', () => {
    const answer = asked([CLAY, REPAIR], [line({ segments: HALVES })])
    expect(kindsOf(answer)).toEqual([])
    const [built] = answer.asBuilt.components
    expect(built).toMatchObject({ key: '88-1/line', standing: 'in-service' })
    expect(built!.measures.material).toMatchObject({ state: 'stated', value: 'vitrified-clay' })
    expect(built!.measures.segments).toMatchObject({ value: [{ from: { ft: 31 }, to: { ft: 60 } }] })
  })

  test('is told with what the inspection says nothing of', () => {
    const answer = asked(
      [CLAY],
      [line({ length: '60 ft', segments: [{ from: '0 ft', to: '31 ft', material: 'vitrified-clay' }] })],
    )
    expect(says(answer)[0]).toMatch(/the inspection says nothing of 31 to 60 ft/)
    expect(kindsOf(answer)).toEqual([])
  })

  test.each([
    ['a joint 2 ft off is the same joint', '33 ft', []],
    ['one 4 ft off is not', '35 ft', ['line-replaced-without-permit']],
  ])('%s', (_, joint, kinds) => {
    const segments = [
      { from: '0 ft', to: joint, material: 'vitrified-clay' },
      { from: joint, to: '60 ft', material: 'pvc' },
    ]
    expect(kindsOf(asked([CLAY, REPAIR], [line({ segments })]))).toEqual(kinds)
  })

  test('a splice of 2 ft is told as such', () => {
    const segments = [{ from: '20 ft', to: '22 ft', material: 'pvc' }]
    const answer = asked([CLAY], [line({ material: 'vitrified-clay', segments })])
    expect(says(answer)[0]).toMatch(/20 to 22 ft from the tank the record has vitrified clay/)
  })

  test('another size in one stretch is other pipe', () => {
    const segments = [{ from: '20 ft', to: '40 ft', pipeDiameter: '6 in' }]
    const answer = asked([CLAY], [line({ material: 'vitrified-clay', pipeDiameter: '4 in', segments })])
    expect(kindsOf(answer)).toEqual(['line-replaced-without-permit'])
  })

  test('one material for a line of two does not say which was seen; a third material was laid since', () => {
    const pvc = asked([CLAY, REPAIR], [line({ material: 'pvc' })])
    expect(outcomesOf(pvc, 'line-stretches')[0]?.verdict).toBe('cannot-tell')
    expect(kindsOf(asked([CLAY, REPAIR], [line({ material: 'cast-iron' })]))).toEqual([
      'line-replaced-without-permit',
    ])
  })

  test('measured from the other end it cannot be laid beside the record, where that is not alike throughout', () => {
    const fromFarEnd = { measuredFrom: 'far-end', segments: HALVES }
    expect(outcomesOf(asked([CLAY, REPAIR], [line(fromFarEnd)]), 'line-stretches')[0]?.reason).toMatchObject({
      is: 'unknown',
      gaps: [{ gap: 'other-start', recorded: 'tank', found: 'far-end' }],
    })
    expect(kindsOf(asked([CLAY], [line(fromFarEnd)]))).toEqual(['line-replaced-without-permit'])
  })
})

describe('two repairs of one line', () => {
  const SECOND = permit(
    [
      {
        tag: 'line',
        kind: 'effluent-line',
        action: 'alter',
        measuredFrom: 'tank',
        segments: [{ from: '25 ft', to: '35 ft', material: 'abs' }],
      },
    ],
    { number: '15-R-9', kind: 'repair', issuedOn: '2015-05-01', approvedOn: '2015-06-01' },
  )

  test('the later one lies over the earlier, and both papers are where the stretches come from', () => {
    const { asBuilt } = asked([CLAY, REPAIR, SECOND], [])
    const claim = asBuilt.components[0]!.measures.segments
    expect(claim).toMatchObject({
      state: 'stated',
      value: [
        { from: { ft: 25 }, to: { ft: 35 }, material: 'abs' },
        { from: { ft: 35 }, to: { ft: 60 }, material: 'pvc' },
      ],
      origin: { permit: { number: '15-R-9' } },
      also: [{ permit: { number: '09-R-3' } }],
    })
  })
})

describe('a defect at a station', () => {
  test.each([
    ['roots narrow it: the county decides', 'root-intrusion', 'review'],
    ['a collapse lets nothing through', 'collapse', 'action'],
  ])('%s', (_, seen, severity) => {
    const defects = [{ at: '42 ft', to: '45 ft', seen }]
    const answer = asked([CLAY], [line({ material: 'vitrified-clay', defects })])
    expect(answer.discrepancies.filter(({ kind }) => kind === 'condition-poor')).toMatchObject([{ severity }])
    expect(outcomesOf(answer, 'line-defects').map(reasonWords)[0]).toMatch(
      /in the line at 42 to 45 ft from the tank, in vitrified clay/,
    )
  })

  test('two of a kind are two', () => {
    const defects = [
      { at: '12 ft', seen: 'offset-joint' },
      { at: '42 ft', seen: 'offset-joint' },
    ]
    const answer = asked([CLAY], [line({ material: 'vitrified-clay', defects })])
    expect(kindsOf(answer)).toEqual(['condition-poor', 'condition-poor'])
  })
})
