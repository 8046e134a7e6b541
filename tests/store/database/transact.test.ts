import { randomUUID } from 'node:crypto'
import { sql } from 'kysely'
import { describe, expect, test } from 'vitest'
import { OutsideFailure } from '../../../src/base/outside-failure.ts'
import { asService, type Person, serviceIn } from '../../../src/store/database/actor.ts'
import { openDatabase } from '../../../src/store/database/database.ts'
import { administer, transact, withoutCounty } from '../../../src/store/database/transact.ts'
import { testDatabase } from '../../support/database.ts'

const { database, url } = await testDatabase()
const organization = randomUUID()
const account = randomUUID()

await administer(database, async (tx) => {
  for (const id of ['quillback', 'elsewhere']) {
    await tx.insertInto('county').values({ id, name: id, rule_pack: 'model', parcel_format: '{}' }).execute()
  }
  await tx
    .insertInto('organization')
    .values({ id: organization, kind: 'county', name: 'Department' })
    .execute()
  await tx
    .insertInto('account')
    .values({ id: account, organization, label: 'desk', role: 'reviewer' })
    .execute()
})

const reviewer = (county: string): Person => ({ account, organization, role: 'reviewer', county })
const parcel = (county: string, number: string) => ({
  county,
  id: randomUUID(),
  number,
  address: null,
  retired_on: null,
})

describe('a transaction in somebody’s name', () => {
  test('sees its county and no other', async () => {
    for (const county of ['quillback', 'elsewhere']) {
      await transact(database, reviewer(county), (tx) =>
        tx
          .insertInto('parcel')
          .values(parcel(county, `1-${county}`))
          .execute(),
      )
    }
    const seen = await transact(database, reviewer('quillback'), (tx) =>
      tx.selectFrom('parcel').select(['county', 'number']).execute(),
    )
    expect(seen).toEqual([{ county: 'quillback', number: '1-quillback' }])
  })

  test('may not write into another county', async () => {
    const writing = transact(database, reviewer('quillback'), (tx) =>
      tx.insertInto('parcel').values(parcel('elsewhere', '2')).execute(),
    )
    await expect(writing).rejects.toThrow(/row-level security/)
  })

  test('leaves nothing behind for the next user of the connection', async () => {
    const single = openDatabase({ url, maxConnections: 1, onTrouble: () => {} })
    await transact(single, reviewer('quillback'), (tx) => tx.selectFrom('parcel').selectAll().execute())
    const rows = await withoutCounty(single, (tx) => tx.selectFrom('parcel').selectAll().execute())
    await single.close()
    expect(rows).toEqual([])
  })

  test('is undone whole when the work throws', async () => {
    const broken = transact(database, reviewer('quillback'), async (tx) => {
      await tx.insertInto('parcel').values(parcel('quillback', 'undone')).execute()
      throw new Error('changed my mind')
    })
    await expect(broken).rejects.toThrow('changed my mind')
    const rows = await transact(database, reviewer('quillback'), (tx) =>
      tx.selectFrom('parcel').select('id').where('number', '=', 'undone').execute(),
    )
    expect(rows).toEqual([])
  })

  test('works as a role that owns nothing', async () => {
    const who = await transact(database, reviewer('quillback'), (tx) =>
      sql<{ user: string; owned: number }>`
        select current_user as user, (select count(*) from pg_class where relowner = current_user::regrole) as owned
      `.execute(tx),
    )
    expect(who.rows).toEqual([{ user: 'asfound_service', owned: 0 }])
  })
})

describe('a transaction inside a transaction', () => {
  test('is part of it, and a step in the service’s name ends with the step', async () => {
    const roles: unknown[] = []
    const role = sql<{ role: string }>`select asking_role() as role`
    const outer = transact(database, reviewer('quillback'), async (tx, within) => {
      await transact(within, asService(reviewer('quillback')), async (inner) => {
        await inner.insertInto('parcel').values(parcel('quillback', 'inner')).execute()
        roles.push((await role.execute(inner)).rows[0]?.role)
      })
      roles.push((await role.execute(tx)).rows[0]?.role)
      throw new Error('undo both')
    })
    await expect(outer).rejects.toThrow('undo both')
    expect(roles).toEqual(['service', 'reviewer'])
    const rows = await transact(database, reviewer('quillback'), (tx) =>
      tx.selectFrom('parcel').select('id').where('number', '=', 'inner').execute(),
    )
    expect(rows).toEqual([])
  })

  test('is the caller’s again when the caller catches what the step threw', async () => {
    const role = await transact(database, reviewer('quillback'), async (tx, within) => {
      await transact(within, serviceIn('quillback'), async () => {
        throw new Error('step failed')
      }).catch(() => {})
      return (await sql<{ role: string }>`select asking_role() as role`.execute(tx)).rows[0]?.role
    })
    expect(role).toBe('reviewer')
  })

  test('can’t leave the county', async () => {
    const wandering = transact(database, reviewer('quillback'), (_tx, within) =>
      transact(within, reviewer('elsewhere'), async () => {}),
    )
    await expect(wandering).rejects.toThrow(/left the county/)
  })
})

describe('collisions and failures', () => {
  test('a transaction that has to give way runs again', async () => {
    const [a, b] = [parcel('quillback', 'a'), parcel('quillback', 'b')]
    await transact(database, reviewer('quillback'), (tx) => tx.insertInto('parcel').values([a, b]).execute())
    let arrived = 0
    let runs = 0
    const bothThere = Promise.withResolvers<void>()
    const lockBoth = (first: string, second: string) =>
      transact(database, reviewer('quillback'), async (tx) => {
        runs++
        const lock = (id: string) =>
          tx.selectFrom('parcel').select('id').where('id', '=', id).forUpdate().execute()
        await lock(first)
        if (++arrived === 2) bothThere.resolve()
        await bothThere.promise
        await lock(second)
        return 'done'
      })
    expect(await Promise.all([lockBoth(a.id, b.id), lockBoth(b.id, a.id)])).toEqual(['done', 'done'])
    // Each of the two ran, and at least one of them again; on a busy machine they may meet more than once.
    expect(runs).toBeGreaterThanOrEqual(3)
  })

  test('a database that is not there is an outside failure worth another try', async () => {
    const gone = openDatabase({
      url: 'postgresql://nobody@127.0.0.1:1/none',
      maxConnections: 1,
      onTrouble: () => {},
    })
    const asked = transact(gone, reviewer('quillback'), async (tx) =>
      tx.selectFrom('parcel').selectAll().execute(),
    )
    await expect(asked).rejects.toBeInstanceOf(OutsideFailure)
    await expect(asked).rejects.toMatchObject({ retryAfterSeconds: 5 })
    await gone.close()
  })

  test('the opening’s own fault is told, not the one that follows from it', async () => {
    const asked = transact(database, { ...reviewer('quillback'), county: 'no/such' }, async () => {})
    await expect(asked).rejects.toThrow(/impossible characters/)
  })
})

test('int8 comes as a number, a date as text, numbers beyond 2^53 as a fault', async () => {
  const ask = <T>(expression: ReturnType<typeof sql<T>>) =>
    withoutCounty(
      database,
      async (tx) => (await sql<{ v: T }>`select ${expression} as v`.execute(tx)).rows[0]?.v,
    )
  expect(await ask(sql`9007199254740991::int8`)).toBe(Number.MAX_SAFE_INTEGER)
  expect(await ask(sql`'1958-02-28'::date`)).toBe('1958-02-28')
  await expect(ask(sql`9007199254740993::int8`)).rejects.toThrow(/beyond the integers/)
})
