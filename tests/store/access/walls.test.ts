import { sql } from 'kysely'
import { describe, expect, test } from 'vitest'
import { type Actor, memberOf } from '../../../src/store/database/actor.ts'
import type { Database } from '../../../src/store/database/database.ts'
import { administer, transact, withoutCounty } from '../../../src/store/database/transact.ts'
import { findingsOf } from '../../../src/store/findings.ts'
import { permitsOf } from '../../../src/store/permits.ts'
import { liveThrough } from '../../http/access/matrix/world.ts'
import { testApp } from '../../support/app.ts'

/**
 * The second wall alone: every table the service may read, asked past every operation, in the name of everybody. No
 * where-clause says whose: what comes back is what row-level security lets through.
 */

const service = await testApp()
const { services, people } = service
const { database } = services
const world = await liveThrough(service)
const { reviewer, firm, rival, agent, stranger } = people

const tables = await administer(database, async (tx) => {
  const { rows } = await sql<{ name: string; of_county: boolean }>`
    select c.relname as name, exists (select from pg_attribute a
      where a.attrelid = c.oid and a.attname = 'county' and not a.attisdropped) as of_county
    from pg_class c
    where c.relnamespace = 'public'::regnamespace and c.relkind = 'r'
      and has_any_column_privilege('asfound_service', c.oid, 'select') order by 1`.execute(tx)
  return rows
})

/** All rows of a table that an actor sees, as text; of each column only where its reading is granted. */
async function seen(within: Database, actor: Actor | 'nobody', table: string): Promise<readonly string[]> {
  const columns = await administer(database, async (tx) => {
    const { rows } = await sql<{ name: string }>`
      select a.attname as name from pg_attribute a
      where a.attrelid = ${`public.${table}`}::regclass and a.attnum > 0 and not a.attisdropped
        and has_column_privilege('asfound_service', a.attrelid, a.attnum, 'select')`.execute(tx)
    return rows.map(({ name }) => `"${name}"`).join(', ')
  })
  const ask = async (tx: Parameters<Parameters<typeof transact>[2]>[0]) => {
    const query = sql<{
      line: string
    }>`select t::text as line from (select ${sql.raw(columns)} from ${sql.table(table)}) t`
    return (await query.execute(tx)).rows.map(({ line }) => line)
  }
  return actor === 'nobody' ? withoutCounty(within, ask) : transact(within, actor, ask)
}

const theirs = {
  draft: world.draft,
  findings: world.submitted,
  reconciliation: world.reconciliation,
  difference: world.discrepancy,
  photo: world.photo,
  letter: world.letters.firm,
  subscription: world.subscriptions.firm.id,
  job: world.jobs.firm,
}
const file = {
  permit: world.permit,
  document: world.document,
  trial: world.trial,
  import: world.import,
  rerun: world.rerun,
}

/** Who must see nothing of what, in any row of any table. */
const WALLS: readonly (readonly [string, Actor | 'nobody', Readonly<Record<string, string>>])[] = [
  [
    'another firm',
    rival,
    {
      ...theirs,
      document: world.document,
      trial: world.trial,
      firm: firm.organization,
      account: firm.account,
    },
  ],
  ['an agent', agent, { ...theirs, ...file, firm: firm.organization, account: firm.account }],
  [
    'a reviewer of another county',
    stranger,
    { ...theirs, ...file, firm: firm.organization, account: firm.account, parcel: world.parcel },
  ],
  [
    'a firm in a county it is not admitted to',
    { ...rival, county: 'elsewhere' },
    { ...theirs, ...file, parcel: world.parcel },
  ],
  [
    'another firm at its own people',
    memberOf(rival),
    { ...theirs, ...file, firm: firm.organization, account: firm.account, parcel: world.parcel },
  ],
  [
    'a reviewer at their own people',
    memberOf(reviewer),
    { ...theirs, ...file, firm: firm.account, parcel: world.parcel },
  ],
  [
    'nobody',
    'nobody',
    { ...theirs, ...file, parcel: world.parcel, firm: firm.organization, account: firm.account },
  ],
]

/** A letter keeps the ids of what it rests on, to be compared when it is checked; its own row is its holder's. */
const restsOn = (table: string, name: string): boolean =>
  table === 'letter' && ['findings', 'reconciliation', 'permit'].includes(name)

describe.each(WALLS)('%s', (_, actor, secrets) => {
  test.each(tables.map(({ name }) => name))('sees nothing of others in %s', async (table) => {
    const rows = await seen(database, actor, table)
    const leaks = Object.entries(secrets).filter(
      ([name, secret]) => !restsOn(table, name) && rows.some((row) => row.includes(secret)),
    )
    expect(leaks.map(([name]) => name)).toEqual([])
  })
})

test('the walls are not walls to everybody: whoever may, sees each of these somewhere', async () => {
  const everything = async (actor: Actor) =>
    (await Promise.all(tables.map(({ name }) => seen(database, actor, name)))).flat().join('\n')
  const [ofFirm, ofReviewer] = [await everything(firm), await everything(reviewer)]
  for (const secret of Object.values(theirs)) expect(ofFirm.includes(secret)).toBe(true)
  for (const secret of Object.values(file)) expect(ofReviewer.includes(secret)).toBe(true)
})

const [parcel] = await administer(database, (tx) =>
  tx.selectFrom('parcel').select('id').where('number', '=', world.parcel).execute(),
)

describe('a store asked for another’s by its very id', () => {
  test('answers with nothing', async () => {
    const permits = (actor: Actor) =>
      transact(database, actor, (tx) => permitsOf(tx, 'quillback', parcel!.id))
    const findings = (actor: Actor) =>
      transact(database, actor, (tx) => findingsOf(tx, 'quillback', parcel!.id))
    expect((await permits(reviewer)).length).toBeGreaterThan(0)
    expect((await findings(firm)).length).toBeGreaterThan(0)
    for (const who of [agent, stranger, { ...reviewer, county: 'elsewhere' }])
      expect(await permits(who)).toEqual([])
    for (const who of [rival, agent, stranger]) expect(await findings(who)).toEqual([])
  })
})

describe('what is nobody’s to read', () => {
  test('hashes of tokens, in whosever name', async () => {
    for (const who of [reviewer, firm, memberOf(firm)]) {
      const asking = transact(database, who, (tx) => tx.selectFrom('access_token').select('hash').execute())
      await expect(asking).rejects.toThrow(/permission denied/)
    }
  })

  test.each(['invitation', 'recovery_code', 'outside_identity', 'throttle'])(
    '%s, in a person’s name',
    async (table) => {
      for (const who of [reviewer, firm, memberOf(firm), memberOf(reviewer)]) {
        expect(await seen(database, who, table)).toEqual([])
      }
    },
  )

  test('passwords and sealed secrets of others', async () => {
    for (const table of ['sign_in', 'second_step', 'session']) {
      const rows = await seen(database, memberOf(rival), table)
      expect(rows.filter((row) => !row.includes(rival.account))).toEqual([])
    }
  })
})

describe('who may write about people', () => {
  const attempts: readonly (readonly [
    string,
    Actor,
    (tx: Parameters<Parameters<typeof transact>[2]>[0]) => Promise<unknown>,
  ])[] = [
    [
      'a firm admits itself to a county',
      firm,
      (tx) =>
        tx
          .insertInto('admission')
          .values({ county: 'elsewhere', organization: firm.organization, admitted_by: firm.account })
          .execute(),
    ],
    [
      'a reviewer who looks after nothing admits',
      reviewer,
      (tx) =>
        tx
          .insertInto('admission')
          .values({ county: 'quillback', organization: stranger.organization, admitted_by: null })
          .execute(),
    ],
    [
      'somebody makes themself an account elsewhere',
      memberOf(firm),
      (tx) =>
        tx
          .insertInto('account')
          .values({ id: services.newId(), organization: rival.organization, role: 'firm', label: 'x' })
          .execute(),
    ],
    [
      'somebody issues a token for another’s account',
      memberOf(firm),
      (tx) =>
        tx
          .insertInto('access_token')
          .values({
            id: services.newId(),
            account: rival.account,
            name: 'x',
            hash: Buffer.alloc(32),
            counties: [],
            issued_by: null,
            expires_at: null,
          })
          .execute(),
    ],
    [
      'somebody begins a session in another’s name',
      memberOf(firm),
      (tx) =>
        tx
          .insertInto('session')
          .values({ hash: Buffer.alloc(32, 7), account: rival.account, browser: null, ends_at: new Date() })
          .execute(),
    ],
  ]
  test.each(attempts)('not: %s', async (_, actor, attempt) => {
    await expect(transact(database, actor, attempt)).rejects.toThrow(/row-level security/)
  })

  test('nothing: somebody makes themself look after the organization', async () => {
    await transact(database, memberOf(firm), (tx) =>
      tx.updateTable('account').set({ administers: true }).where('id', '=', firm.account).execute(),
    )
    const row = await administer(database, (tx) =>
      tx.selectFrom('account').select('administers').where('id', '=', firm.account).executeTakeFirst(),
    )
    expect(row?.administers).toBe(false)
  })

  test('not: anybody moves an account to another organization, or gives it another role', async () => {
    for (const change of [{ organization: rival.organization }, { role: 'reviewer' as const }]) {
      const changing = transact(database, memberOf(firm), (tx) =>
        tx.updateTable('account').set(change).where('id', '=', firm.account).execute(),
      )
      await expect(changing).rejects.toThrow(/permission denied/)
    }
  })
})
