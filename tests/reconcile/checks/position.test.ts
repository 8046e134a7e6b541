import { describe, expect, test } from 'vitest'
import { reasonWords } from '../../../src/words/reasons.ts'
import { asked, kindsOf, outcomesOf, permit } from '../asked.ts'

const reference = { a: 'NW corner', b: 'NE corner', baseline: '40 ft', wall: 'rear' } as const
const tied = (a: string, b: string, more: object = {}) =>
  permit([{ tag: 'tank 1', kind: 'tank', tie: { a, b, ...more } }], { reference })
const found = (a: string, b: string, side: 'away' | 'toward' = 'away') =>
  [{ key: '88-1/tank 1', label: 'tank 1', kind: 'tank', outcome: 'found', tie: { a, b, side } }] as never

describe('position by ties', () => {
  test('the same ties agree', () => {
    expect(
      kindsOf(
        asked([tied('30 ft', '35 ft', { sideWords: 'rear of house' })], found('30 ft', '35 ft'), {
          reference,
        }),
      ),
    ).toEqual([])
  })

  test('half a foot is what a record drawing may be off (WAC 246-272A-0265(1)); six feet is not', () => {
    const record = tied('30 ft', '35 ft', { side: 'away' })
    expect(kindsOf(asked([record], found('30.4 ft', '35.3 ft'), { reference }))).toEqual([])
    const answer = asked([record], found('30 ft', '41 ft'), { reference })
    expect(kindsOf(answer)).toEqual(['position-differs'])
    expect(
      reasonWords(answer.discrepancies.find(({ kind }) => kind === 'position-differs')!.outcome),
    ).toMatch(/^tank 1 was found 6'-\d/)
  })

  test('with no side on record the mirror place counts too, and the answer says so', () => {
    const record = tied('30 ft', '35 ft')
    const [outcome] = outcomesOf(
      asked([record], found('30 ft', '35 ft', 'toward'), { reference }),
      'position',
    )
    expect(outcome).toMatchObject({ verdict: 'agrees', certainty: { word: 'likely' } })
    expect(outcome!.reason).toMatchObject({ is: 'apart', mirrored: true })
  })

  test('on the other side of the wall from where the record says, it is elsewhere', () => {
    const answer = asked([tied('30 ft', '35 ft', { sideWords: 'rear' })], found('30 ft', '35 ft', 'toward'), {
      reference,
    })
    expect(kindsOf(answer)).toContain('position-differs')
  })

  test('ties from other corners are not compared', () => {
    const other = { ...reference, a: 'garage corner' }
    const [outcome] = outcomesOf(
      asked([tied('30 ft', '35 ft')], found('30 ft', '35 ft'), { reference: other }),
      'position',
    )
    expect(outcome).toMatchObject({ verdict: 'does-not-apply' })
  })

  test('ties that cannot meet say by how much they miss', () => {
    const [outcome] = outcomesOf(
      asked([tied('106.2 ft', '191.5 ft')], found('30 ft', '35 ft'), { reference }),
      'position',
    )
    expect(outcome).toMatchObject({ verdict: 'cannot-tell' })
    expect(outcome!.reason).toMatchObject({ gaps: [{ gap: 'ties-do-not-meet', where: 'record' }] })
  })
})
