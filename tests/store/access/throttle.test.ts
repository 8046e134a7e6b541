import { describe, expect, test } from 'vitest'
import {
  beginTry,
  forgetTries,
  type Guarded,
  sweepTries,
  takeBackTry,
} from '../../../src/store/access/throttle.ts'
import { DOORKEEPER } from '../../../src/store/database/actor.ts'
import { administer, transact } from '../../../src/store/database/transact.ts'
import { testDatabase } from '../../support/database.ts'

const { database } = await testDatabase()
const start = new Date('2026-11-25T09:00:00Z')
const at = (seconds: number) => new Date(start.getTime() + seconds * 1_000)
const guarded = (which: string, free = 3): Guarded => ({ what: 'name', which, free })
const tryAt = (which: string, seconds: number) =>
  transact(database, DOORKEEPER, (tx) => beginTry(tx, guarded(which), at(seconds)))

describe('guesses', () => {
  test('are free at first, then wait: half a minute, doubled each time, a quarter of an hour at most', async () => {
    const waits: number[] = []
    let now = 0
    for (let time = 0; time < 20; time++) {
      const wait = await tryAt('one', now)
      if (wait === 0) continue
      waits.push(wait)
      expect(await tryAt('one', now + wait - 1)).toBe(1)
      now += wait
    }
    expect(waits.slice(0, 8)).toEqual([30, 60, 120, 240, 480, 900, 900, 900])
  })

  test('made at once are all counted: no more than the free ones get by', async () => {
    const answers = await Promise.all(Array.from({ length: 20 }, () => tryAt('at-once', 0)))
    // Three are free; the fourth is made and starts the wait.
    expect(answers.filter((wait) => wait === 0)).toHaveLength(4)
  })

  test('are forgotten when the right one came, and after a day', async () => {
    for (let time = 0; time < 4; time++) await tryAt('forgotten', 0)
    expect(await tryAt('forgotten', 1)).toBeGreaterThan(0)
    await transact(database, DOORKEEPER, (tx) => forgetTries(tx, guarded('forgotten')))
    expect(await tryAt('forgotten', 1)).toBe(0)
    for (let time = 0; time < 3; time++) await tryAt('aged', 0)
    for (let time = 0; time < 3; time++) expect(await tryAt('aged', 86_401)).toBe(0)
    await transact(database, DOORKEEPER, (tx) => sweepTries(tx, at(3 * 86_400)))
    const left = await administer(database, (tx) => tx.selectFrom('throttle').select('tries').execute())
    expect(left).toEqual([])
  })

  test('one of many that turned out right is taken back, and the others count on', async () => {
    for (let time = 0; time < 4; time++) await tryAt('shared', 0)
    await transact(database, DOORKEEPER, (tx) => takeBackTry(tx, guarded('shared')))
    expect(await tryAt('shared', 1)).toBe(0)
    expect(await tryAt('shared', 1)).toBeGreaterThan(0)
  })

  test('are kept without what was guessed at', async () => {
    await tryAt('records.desk@quillback.example', 0)
    const rows = await administer(database, (tx) => tx.selectFrom('throttle').selectAll().execute())
    expect(rows.map(({ key }) => key.toString('latin1')).join()).not.toContain('records')
    expect(rows.every(({ key }) => key.length === 32)).toBe(true)
  })
})
