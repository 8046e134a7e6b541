import { expect, test } from 'vitest'
import { readAhead } from '../../src/base/read-ahead.ts'

async function* counting(to: number, log: string[] = [], failAt = Number.POSITIVE_INFINITY) {
  try {
    for (let n = 1; n <= to; n++) {
      if (n === failAt) throw new Error(`at ${n}`)
      log.push(`made ${n}`)
      yield n
    }
  } finally {
    log.push('ended')
  }
}

test('gives everything in its order, and makes the next while one is worked on', async () => {
  const log: string[] = []
  for await (const n of readAhead(counting(3, log))) {
    await new Promise((resolve) => setImmediate(resolve))
    log.push(`worked on ${n}`)
  }
  expect(log).toEqual(['made 1', 'made 2', 'worked on 1', 'made 3', 'worked on 2', 'ended', 'worked on 3'])
})

test('a fault comes after what came before it', async () => {
  const got: number[] = []
  const all = async () => {
    for await (const n of readAhead(counting(5, [], 3))) got.push(n)
  }
  await expect(all()).rejects.toThrow('at 3')
  expect(got).toEqual([1, 2])
})

test('who stops early lets the source end, and a fault that nobody waits for is nobody’s', async () => {
  const log: string[] = []
  for await (const n of readAhead(counting(5, log, 2))) {
    expect(n).toBe(1)
    await new Promise((resolve) => setImmediate(resolve))
    break
  }
  expect(log).toContain('ended')
  expect(log).not.toContain('made 3')
})
