import { expect, test } from 'vitest'
import { takingTurns } from '../../src/base/turns.ts'

const turnsOf = (atOnce: number, each: number, mostWaiting = 100) => {
  const turns = takingTurns({ what: 'tests', atOnce, each, mostWaiting })
  const begun: string[] = []
  const ends = new Map<string, () => void>()
  const ask = (who: string, name: string) =>
    turns(who, () => {
      begun.push(name)
      return new Promise<void>((resolve) => ends.set(name, resolve))
    })
  const end = async (name: string) => {
    ends.get(name)!()
    for (let turn = 0; turn < 5; turn++) await Promise.resolve()
  }
  return { ask, begun, end }
}

test('whoever asks for many waits behind themselves; whoever asks for one comes next', async () => {
  const { ask, begun, end } = turnsOf(2, 2)
  for (let n = 1; n <= 5; n++) void ask('a', `a${n}`)
  void ask('b', 'b1')
  await Promise.resolve()
  expect(begun).toEqual(['a1', 'a2'])
  await end('a1')
  await end('a2')
  expect(begun).toEqual(['a1', 'a2', 'a3', 'b1'])
})

test('nobody has more at once than is theirs, though there is room', async () => {
  const { ask, begun, end } = turnsOf(3, 1)
  void ask('a', 'a1')
  void ask('a', 'a2')
  void ask('b', 'b1')
  await Promise.resolve()
  expect(begun).toEqual(['a1', 'b1'])
  await end('b1')
  expect(begun).toEqual(['a1', 'b1'])
  await end('a1')
  expect(begun).toEqual(['a1', 'b1', 'a2'])
})

test('beyond those who may wait everybody is told to come again; a failure gives the turn on', async () => {
  const turns = takingTurns({ what: 'tests', atOnce: 1, each: 1, mostWaiting: 1 })
  const failing = turns('a', () => Promise.reject(new Error('broken')))
  const next = turns('b', () => Promise.resolve('done'))
  await expect(turns('c', () => Promise.resolve())).rejects.toMatchObject({ retryAfterSeconds: 5 })
  await expect(failing).rejects.toThrow('broken')
  expect(await next).toBe('done')
})
