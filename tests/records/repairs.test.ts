import { describe, expect, test } from 'vitest'
import { detailOf } from '../../src/reconcile/detail.ts'
import { VOICES } from '../../src/words/agent/status.ts'
import { asked, kindsOf, outcomesOf, permit } from '../reconcile/asked.ts'

const field = { tag: 'field', kind: 'trench', length: '60 ft', width: '36 in', count: 3 } as const
const old = permit([field], { percRateMpi: 10 })
const repair = (part: object, more: readonly object[] = []) =>
  permit([{ ...field, tag: 'new field', ...part }, ...more] as never, {
    number: '95-1',
    kind: 'repair',
    issuedOn: '1995-03-01',
    approvedOn: '1995-05-01',
  })
const area = (second: ReturnType<typeof repair>, first = old) => {
  const answer = asked([first, second], [])
  const { verdict, reason } = outcomesOf(answer, 'absorption-against-code').find(
    ({ facet }) => facet === 'today',
  )!
  const sqFt = reason.is === 'absorption-code' ? Math.round(reason.provided.value) : null
  return { answer, verdict, reason, sqFt }
}

describe('a repair that installs a field', () => {
  test('and says nothing of the old one is asked about, and until it is answered no areas are summed', () => {
    const { answer, verdict, reason } = area(repair({}))
    expect(answer.asBuilt.contradictions).toMatchObject([
      { gap: 'beside-or-instead', permit: '95-1', part: { label: 'new field' }, among: [{ label: 'field' }] },
    ])
    expect(kindsOf(answer)).toContain('record-unclear')
    expect(verdict).toBe('cannot-tell')
    expect(reason).toMatchObject({ is: 'unknown', gaps: [{ gap: 'beside-or-instead' }] })
  })
  test('beside the old one: both count', () => {
    expect(area(repair({ action: 'add' })).sqFt).toBe(1080)
    expect(area(repair({}, [{ tag: 'field', kind: 'trench', action: 'mention' }])).sqFt).toBe(1080)
  })
  test('instead of it: the new one alone', () => {
    expect(area(repair({ action: 'replace', replaces: ['field'] })).sqFt).toBe(540)
    expect(area(repair({}, [{ tag: 'field', kind: 'trench', action: 'abandon' }])).sqFt).toBe(540)
  })
})

describe('a repair that replaces a field without saying which', () => {
  const [east, west] = ['east field', 'west field'].map((tag) => ({ ...field, tag }))
  const two = permit([east, west] as never, { percRateMpi: 10 })
  const instead = (replaces: readonly string[]) => area(repair({ action: 'replace', replaces }), two)
  test('of two: no areas are summed until it is answered', () => {
    expect(instead([])).toMatchObject({
      verdict: 'cannot-tell',
      reason: {
        is: 'unknown',
        gaps: [
          { gap: 'which-target', permit: '95-1', among: [{ label: 'east field' }, { label: 'west field' }] },
        ],
      },
    })
  })
  test('named, what is left and the new one count', () => {
    expect(instead(['east field']).sqFt).toBe(1080)
    expect(instead(['east field', 'west field']).sqFt).toBe(540)
  })
  test('abandoning one of two without a name is asked about too', () => {
    const gone = repair({ tag: 'field', action: 'abandon', length: null, width: null, count: null })
    expect(area(gone, two)).toMatchObject({ verdict: 'cannot-tell', reason: { gaps: [{ verb: 'abandon' }] } })
  })
  test('of a kind that no permit put in, while another lies there, neither is summed', () => {
    const pits = permit([{ tag: 'pit', kind: 'seepage-pit', diameter: '6 ft', effectiveDepth: '8 ft' }], {
      percRateMpi: 10,
    })
    expect(area(repair({ action: 'replace' }), pits)).toMatchObject({
      verdict: 'cannot-tell',
      reason: { gaps: [{ gap: 'no-target' }] },
    })
  })
  test('of a kind that no permit put in, and nothing else on record: it is the only one', () => {
    const tankOnly = permit([{ tag: 'tank', kind: 'tank', capacity: '1000 gal' }], { percRateMpi: 10 })
    expect(area(repair({ action: 'replace' }), tankOnly).sqFt).toBe(540)
  })
})

describe('what an agent reads of it', () => {
  const told = (second: ReturnType<typeof repair>, first = old) => {
    const { answer } = area(second, first)
    return answer.discrepancies
      .filter(({ kind }) => kind === 'record-unclear')
      .flatMap(({ outcome }) =>
        (['en', 'es'] as const).map((language) =>
          VOICES[language].says['record-unclear']({ detail: detailOf(outcome) } as never),
        ),
      )
  }
  test('names the question, in both languages', () => {
    expect(told(repair({}))).toEqual([
      'A repair put in a new drainfield. Its permit does not say if the old one is still in use.',
      'Una reparación puso un campo de drenaje nuevo. El permiso no dice si el viejo aún se usa.',
    ])
    const two = permit([
      { ...field, tag: 'east' },
      { ...field, tag: 'west' },
    ])
    expect(told(repair({ action: 'replace' }), two)).toEqual([
      'A later permit does not say which part it replaced, changed or closed.',
      'Un permiso posterior no dice qué parte cambió o cerró.',
    ])
  })
})
