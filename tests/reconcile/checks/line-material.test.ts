import { expect, test } from 'vitest'
import { asked, kindsOf, outcomesOf, permit } from '../asked.ts'

const CAST_IRON = permit([
  { tag: 'sewer', kind: 'building-sewer', material: 'cast-iron', pipeDiameter: '4 in' },
])
const LATER = permit(
  [{ tag: 'sewer', kind: 'building-sewer', action: 'replace', material: 'pvc', pipeDiameter: '4 in' }],
  {
    number: '07-R-12',
    kind: 'repair',
    issuedOn: '2007-08-01',
    approvedOn: '2007-09-14',
  },
)
const plastic = (key = '88-1/sewer') =>
  ({
    key,
    label: 'sewer',
    kind: 'building-sewer',
    outcome: 'found',
    material: 'pvc',
    pipeDiameter: '4 in',
  }) as never

test('cast iron that is now PVC, with no paper, was replaced without a permit', () => {
  const answer = asked([CAST_IRON], [plastic()])
  expect(kindsOf(answer)).toEqual(['line-replaced-without-permit'])
})

test('the later permit turns it into history, whichever of the two lines the finding names', () => {
  for (const key of ['88-1/sewer', '07-R-12/sewer']) {
    const answer = asked([CAST_IRON, LATER], [plastic(key)])
    expect(kindsOf(answer)).toEqual(['line-replaced'])
    expect(outcomesOf(answer, 'line-material')[0]?.reason).toMatchObject({
      is: 'replaced-under-permit',
      permit: '07-R-12',
    })
  }
})

test('a permit approved after the inspection explains nothing the inspection saw', () => {
  const after = { ...LATER, issuedOn: '2026-05-21', approvedOn: '2026-05-25' }
  expect(kindsOf(asked([CAST_IRON, after], [plastic()]))).toEqual([
    'findings-stale',
    'line-replaced-without-permit',
  ])
})

test('another size is another line; half an inch is one size read twice', () => {
  const iron = (pipeDiameter: string) =>
    ({
      key: '88-1/sewer',
      label: 'sewer',
      kind: 'building-sewer',
      outcome: 'found',
      material: 'cast-iron',
      pipeDiameter,
    }) as never
  expect(kindsOf(asked([CAST_IRON], [iron('6 in')]))).toEqual(['line-replaced-without-permit'])
  expect(kindsOf(asked([CAST_IRON], [iron('4 1/2 in')]))).toEqual([])
})
