import { readFile } from 'node:fs/promises'
import { setTimeout as wait } from 'node:timers/promises'
import { sql } from 'kysely'
import { must } from '../../../../src/base/result.ts'
import { taughtExample } from '../../../../src/http/api/forms/shapes.ts'
import { permitExample } from '../../../../src/http/api/shapes/entries.ts'
import { rulesText } from '../../../../src/http/inspection/server/file.ts'
import { invite } from '../../../../src/operations/access/invite.ts'
import { readPaper } from '../../../../src/operations/documents/read-paper.ts'
import { subscribe } from '../../../../src/operations/subscriptions/subscribe.ts'
import { placeOf } from '../../../../src/rules/pack.ts'
import { addAccount, addOrganization, issueToken } from '../../../../src/store/access/enrol.ts'
import { beginSession } from '../../../../src/store/access/sessions.ts'
import { newToken, tokenHash } from '../../../../src/store/access/token.ts'
import { DOORKEEPER, type Role } from '../../../../src/store/database/actor.ts'
import { administer, transact } from '../../../../src/store/database/transact.ts'
import { makeForm } from '../../../forms/make.ts'
import type { TestApp } from '../../../support/app.ts'
import { COUNTY, type People } from '../../../support/people.ts'
import { pictureWith } from '../../../support/pictures.ts'
import { inspectionThatDiffers, newParcel } from '../../../support/quillback.ts'
import { jobRunner } from '../../../support/run-jobs.ts'
import { uploading } from '../../../support/upload.ts'

const here = `/v1/counties/${COUNTY}`
const NUMBER = '07-0412-0041'

export type World = Awaited<ReturnType<typeof liveThrough>>

/** A machine that does much else at the same time turns requests away now and then: they are made again. */
const patient =
  (ask: TestApp['ask']): TestApp['ask'] =>
  async (who, request) => {
    for (let time = 1; ; time++) {
      const answer = await ask(who, request)
      if (answer.status !== 503 || time === 20) return answer
      await wait(500)
    }
  }

/** A county in which one of everything was done, by one firm, one reviewer and one agent. */
export async function liveThrough(
  test: TestApp,
  permitEntered: object = permitExample,
  inspected: object = inspectionThatDiffers,
) {
  const { services, people } = test
  const ask = patient(test.ask)
  const { database } = services
  const runJobs = jobRunner(test)
  const { id: system } = await newParcel(services, NUMBER)
  await newParcel(services, '07-0412-0032')
  const at = `${here}/parcels/${NUMBER}`
  const post = async (who: keyof People, url: string, body?: object, headers = {}) => {
    const answer = await ask(who, { method: 'POST', url, headers, ...(body ? { body } : {}) })
    if (answer.status >= 300) throw new Error(`${url}: ${answer.status} ${JSON.stringify(answer.body)}`)
    return answer.body
  }
  const { permit } = await post('reviewer', `${at}/permits`, permitEntered)
  const draft = await post('firm', `${at}/findings`, inspected)
  const submitted = await post('firm', `${at}/findings`, inspected)
  const photo = await ask('firm', await photoOf(submitted.id))
  const { consequence } = await post('firm', `${here}/findings/${submitted.id}/submission`)
  const letters = {
    reviewer: await post('reviewer', `${at}/letters`, { kind: 'status' }),
    firm: await post('firm', `${at}/letters`, { kind: 'status' }),
    agent: await post('agent', `${at}/letters`, { kind: 'status' }),
  }
  const made = await makeForm([{ layout: 'form-1986', seed: 3 }])
  const taken = await ask(
    'reviewer',
    await uploading(`${here}/documents`, { file: { bytes: made.pdf, name: 'permit.pdf' } }),
  )
  const document: string = taken.body.document.id
  await readPaper(services, {
    id: document,
    actor: people.reviewer,
    data: { document },
    report: async () => {},
    signal: new AbortController().signal,
  })
  const brought = { name: 'A form from elsewhere', taught: taughtExample }
  const form = (await post('reviewer', `${here}/forms`, brought)).id
  const csv = { bytes: Buffer.from('Parcel No,Permit Number\n07-0412-0032,75-1\n'), name: 'index.csv' }
  const imported = await ask('reviewer', await uploading(`${here}/imports`, { kind: 'permits', file: csv }))
  const rerun = await post('reviewer', `${here}/reruns`, { cause: 'asked-for' })
  const yaml = await readFile(
    new URL('../../../../src/rules/packs/public-health-service/tanks.yaml', import.meta.url),
    'utf8',
  )
  const trial = await post('reviewer', `${here}/rules/trial`, { yaml })
  await runJobs()
  // The test's queue only lists what is left to it: what it would have written down is written here.
  const job = async (
    who: Role,
    id = services.newId(),
    kind = 'read-document',
    state: 'done' | 'waiting' = 'done',
  ) => {
    const { organization, account } = people[who]
    const row = { county: COUNTY, id, kind, organization, requested_by: account, state }
    await administer(database, (tx) =>
      tx
        .insertInto('job')
        .values({ ...row, total: null, says: null })
        .execute(),
    )
    return id
  }
  const jobs = { reviewer: await job('reviewer'), firm: await job('firm'), agent: await job('agent') }
  await job('reviewer', trial.trial, 'try-rules', 'waiting')
  const subscription = async (who: Role) => {
    const actor = people[who]
    const asked = { address: 'https://hooks.example/status', parcel: NUMBER }
    const outside = {
      resolve: async () => [{ address: '192.0.2.9', family: 4 }],
      isPublic: () => true,
      protocols: ['https:'],
    }
    const made = must(await subscribe(services, actor, asked, { vault: services.door.vault, outside }))
    const delivery = services.newId()
    await administer(database, (tx) =>
      sql`insert into delivery (county, id, subscription, parcel, body, next_at, state)
        select ${COUNTY}, ${delivery}, ${made.subscription.id}, p.id, '{}', now(), 'dead'
        from parcel p where p.number = ${NUMBER}`.execute(tx),
    )
    return { id: made.subscription.id, delivery }
  }
  const subscriptions = {
    reviewer: await subscription('reviewer'),
    firm: await subscription('firm'),
    agent: await subscription('agent'),
  }

  /** Of whoever plays that role here. */
  const fresh = {
    account: (role: Role) =>
      administer(database, (tx) =>
        addAccount(tx, { organization: people[role].organization, role, label: 'hand' }),
      ).then(async (account) => {
        await administer(database, (tx) =>
          tx
            .insertInto('sign_in')
            .values({ account, name: `hand.${account}`, password_hash: null })
            .execute(),
        )
        return account
      }),
    token: (role: Role) =>
      administer(database, async (tx) => {
        await issueToken(tx, { account: people[role].account, name: 'fresh', counties: [COUNTY] })
        const rows = await tx
          .selectFrom('access_token')
          .select('id')
          .where('name', '=', 'fresh')
          .orderBy('id', 'desc')
          .where('account', '=', people[role].account)
          .limit(1)
          .execute()
        return rows[0]!.id
      }),
    organization: () =>
      administer(database, (tx) =>
        addOrganization(tx, { kind: 'firm', name: 'to be shut out', counties: [COUNTY] }),
      ),
    photo: async () => (await ask('firm', await photoOf(draft.id))).body.id as string,
    session: (role: Role) =>
      transact(database, DOORKEEPER, async (tx) => {
        const hash = tokenHash(newToken())
        const begunAt = new Date()
        const endsAt = new Date(begunAt.getTime() + 3_600_000)
        const { account } = people[role]
        await beginSession(tx, {
          hash,
          account,
          stage: 'full',
          browser: null,
          begunAt,
          endsAt,
          idleMinutes: 60,
        })
        return (
          await tx.selectFrom('session').select('id').where('hash', '=', hash).executeTakeFirstOrThrow()
        ).id
      }),
  }

  const invited = await fresh.account('firm')
  const { secret: invitation } = await transact(database, DOORKEEPER, (tx) =>
    invite(tx, services, invited, null),
  )

  const world = {
    people,
    fresh,
    parcel: NUMBER,
    system,
    permit: permit.id as string,
    draft: draft.id as string,
    submitted: submitted.id as string,
    photo: photo.body.id as string,
    discrepancy: consequence.changes[0].discrepancy as string,
    reconciliation: consequence.reconciliation as string,
    document,
    form,
    import: imported.body.id as string,
    rerun: rerun.id as string,
    trial: trial.trial as string,
    letters: {
      reviewer: letters.reviewer.id as string,
      firm: letters.firm.id as string,
      agent: letters.agent.id as string,
    },
    code: letters.firm.code as string,
    invitation,
    rules: `${rulesText(services.book, placeOf(COUNTY)).hash}.json`,
    jobs,
    subscriptions,
    yaml,
  }
  for (const [name, value] of Object.entries(world))
    must(value === undefined ? { ok: false, error: name } : { ok: true, value })
  return world
}

export async function photoOf(findings: string) {
  const form = new FormData()
  form.set('photo', new Blob([new Uint8Array(await pictureWith())], { type: 'image/jpeg' }), 'one.jpg')
  const sent = new Response(form)
  return {
    method: 'POST' as const,
    url: `${here}/findings/${findings}/photos`,
    headers: { 'content-type': sent.headers.get('content-type') ?? '' },
    body: Buffer.from(await sent.arrayBuffer()),
  }
}
