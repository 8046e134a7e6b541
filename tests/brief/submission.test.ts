import { describe, expect, test } from 'vitest'
import { leftOutUnsaid } from '../../src/brief/submission/left-out.ts'
import { notReady } from '../../src/brief/submission/not-ready.ts'
import { findingsEntry } from '../../src/reading/entry/findings.ts'
import { inputOf, permit } from '../reconcile/asked.ts'

const record = (more: object, components: readonly object[] = []) =>
  findingsEntry.parse({ inspectedOn: '2026-05-19', ground: 'dry', ...more, components } as never)
const asked = (more: object, components: readonly object[] = []) => notReady(record(more, components))
const found = (kind: string, more: object) => ({ label: kind, kind, outcome: 'found', ...more })

describe('a test without its volume', () => {
  const box = found('distribution-box', { opened: 'cover-off', levelAfterTest: { above: '1 in' } })

  test.each([
    ['a level after the test', {}, [box]],
    ['its minutes', { testMinutes: 30 }, []],
  ] as const)('%s asks how much water was run in, and keeps what was written', (_, more, components) => {
    expect(asked(more, components)).toEqual([
      { pointer: '/testVolume', message: expect.stringMatching(/needs its volume.*The readings are kept/) },
    ])
  })

  test('with its volume it is a test', () => {
    expect(asked({ testVolume: '150 gal', testMinutes: 30 }, [box])).toEqual([])
  })
})

describe('a level against an invert that the part does not have', () => {
  test.each([
    [
      'a pit has no outlet',
      'seepage-pit',
      { levelAboveOutlet: { below: '8 in' } },
      /has no outlet: give its level against the inlet/,
    ],
    [
      'a tank is not read from its inlet',
      'tank',
      { levelAboveInlet: { below: '8 in' } },
      /give its level against the outlet/,
    ],
  ] as const)('%s', (_, kind, level, says) => {
    const faults = asked({}, [found(kind, { opened: 'cover-off', ...level })])
    expect(faults).toEqual([
      { pointer: `/components/0/${Object.keys(level)[0]}`, message: expect.stringMatching(says) },
    ])
    expect(faults[0]!.message).toMatch(/What you wrote is kept/)
  })

  test('against its own it is taken', () => {
    expect(
      asked({}, [found('seepage-pit', { opened: 'cover-off', levelAboveInlet: { below: '8 in' } })]),
    ).toEqual([])
  })
})

describe('what the protocol can’t do without and nobody gave a reason for', () => {
  const TANK = permit([{ tag: 'tank', kind: 'tank', capacity: '1000 gal' }])
  const unsaid = (more: object, components: readonly object[]) =>
    leftOutUnsaid(inputOf([TANK], null), {
      id: 'f',
      firm: 'firm',
      submittedOn: '2026-05-20' as never,
      record: record(more, components),
    }).map(({ pointer }) => pointer)
  const pit = found('seepage-pit', {})
  const tank = (more: object) => ({ ...found('tank', more), key: '88-1/tank' })

  test('is asked for at its field', () => {
    expect(unsaid({ backup: false }, [tank({ opened: 'cover-off' }), pit])).toEqual([
      '/components/0/leftOutBecause',
    ])
    expect(unsaid({ backup: false }, [tank({}), pit])).toEqual(['/components/0/opened'])
    expect(unsaid({ backup: false }, [pit])).toEqual(['/components/-'])
    const read = tank({ opened: 'cover-off', levelAboveOutlet: { above: '0 in' } })
    expect(unsaid({ backup: false }, [read])).toEqual(['/leftOutBecause'])
    expect(unsaid({ backup: false, occupancy: 'vacant' }, [read, pit])).toEqual(['/leftOutBecause'])
    expect(unsaid({ backup: false, occupancy: 'vacant', testVolume: '150 gal' }, [read, pit])).toEqual([])
  })

  test('is not asked for where a reason stands', () => {
    expect(unsaid({ backup: false }, [tank({ opened: 'cover-off', leftOutBecause: 'unsafe' }), pit])).toEqual(
      [],
    )
    expect(unsaid({ leftOutBecause: 'no-time' }, [])).toEqual([])
  })
})
