import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { PACKS_FOLDER, readPackTexts } from '../../../src/files/rule-packs.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { shareRerun } from '../../../src/operations/reruns/share-rerun.ts'
import { parsePacks } from '../../../src/rules/parse/parse-packs.ts'
import { testApp } from '../../support/app.ts'
import { inspectionThatDiffers, newParcel, permit1974, permitRecord } from '../../support/quillback.ts'
import { jobRunner } from '../../support/run-jobs.ts'

const service = await testApp()
const { services, people, ask } = service
const runJobs = jobRunner(service)
const here = '/v1/counties/quillback'

const parcels = []
for (let n = 0; n < 3; n++) {
  const parcel = await newParcel(services)
  must(
    await enterPermit(
      services,
      people.reviewer,
      parcel.number,
      permitRecord({ ...permit1974, number: `74-${n}` }),
    ),
  )
  parcels.push(parcel)
}
const inspected = parcels[0]!
const draft = (
  await ask('firm', {
    method: 'POST',
    url: `${here}/parcels/${inspected.number}/findings`,
    body: inspectionThatDiffers,
  })
).body
await ask('firm', { method: 'POST', url: `${here}/findings/${draft.id}/submission` })

const begin = async (cause = 'rules-changed') => {
  const { status, body } = await ask('reviewer', { method: 'POST', url: `${here}/reruns`, body: { cause } })
  expect(status).toBe(202)
  return body.id as string
}
const read = async (id: string) => (await ask('reviewer', { url: `${here}/reruns/${id}` })).body
const move = (id: string, to: 'pause' | 'resumption') =>
  ask('reviewer', { method: 'POST', url: `${here}/reruns/${id}/${to}` })

/** The rules that are shipped with one pack's text changed. */
async function bookWith(path: string, change: (text: string) => string) {
  const texts = await readPackTexts(PACKS_FOLDER)
  const changed = texts.map((it) => (it.path === path ? { path, text: change(it.text) } : it))
  expect(changed).not.toEqual(texts)
  return must(parsePacks(changed))
}

const share = (book: typeof services.book, rerun: string) =>
  shareRerun(
    { ...services, book },
    {
      id: rerun,
      actor: people.reviewer,
      data: { rerun },
      report: async () => {},
      signal: new AbortController().signal,
    },
  )

describe('a re-run of the county', () => {
  test('leaves every parcel alone whose answer rests on what is still so', async () => {
    const id = await begin()
    expect((await read(id)).parcels).toMatchObject({ waiting: 3 })
    await runJobs()
    expect(await read(id)).toMatchObject({
      state: 'done',
      parcels: { waiting: 0, unaffected: 3, same: 0, changed: 0, failed: 0 },
    })
  })

  test('after a change of rules of another place finds nobody affected', async () => {
    const book = await bookWith('virginia/tanks.yaml', (text) =>
      text.replace('bedrooms: 3, gal: 900', 'bedrooms: 3, gal: 901'),
    )
    const id = await begin()
    await share(book, id)
    expect((await read(id)).parcels).toMatchObject({ unaffected: 3 })
  })

  test('after a change of what no answer asks for finds nobody affected', async () => {
    const book = await bookWith('practice/era-facts.yaml', (text) =>
      text.replace('20 to 25 years', '20 to 30 years'),
    )
    const id = await begin()
    await share(book, id)
    expect((await read(id)).parcels).toMatchObject({ unaffected: 3 })
  })

  test('after a change that makes a tank too small says so of that parcel alone', async () => {
    const book = await bookWith('public-health-service/tanks.yaml', (text) =>
      text.replace('bedrooms: 3, gal: 900', 'bedrooms: 3, gal: 700'),
    )
    const id = await begin()
    await share(book, id)
    expect((await read(id)).parcels).toMatchObject({ changed: 1, failed: 0 })
    const { items } = (await ask('reviewer', { url: `${here}/reruns/${id}/parcels?outcome=changed` })).body
    expect(items).toEqual([
      { parcel: inspected.id, number: inspected.number, says: expect.stringMatching(/capacity/) },
    ])
    const newest = (await ask('reviewer', { url: `${here}/parcels/${inspected.number}/reconciliation` })).body
    expect(JSON.stringify(newest)).toContain('rules-changed')
    // And back, as the county runs: the stored answer names other rules than are in force now.
    const back = await begin()
    await runJobs()
    expect((await read(back)).parcels).toMatchObject({ changed: 1, failed: 0 })
  })

  test('counts a parcel that can’t be reconciled as failed, with its reason, and does the others', async () => {
    const id = await begin('asked-for')
    const broken = {
      ...services,
      book: { ...services.book, places: new Map([['quillback', undefined as never]]) },
    }
    Object.defineProperty(broken.book, 'packs', {
      get: () => {
        throw new Error('the rules can’t be read')
      },
    })
    await shareRerun(broken, {
      id,
      actor: people.reviewer,
      data: { rerun: id },
      report: async () => {},
      signal: new AbortController().signal,
    })
    const { state, parcels: counts } = await read(id)
    expect([state, counts.waiting, counts.failed]).toEqual(['done', 0, 3])
    const { items } = (await ask('reviewer', { url: `${here}/reruns/${id}/parcels?outcome=failed` })).body
    expect(items[0].says).toBe('the rules can’t be read')
  })

  test('waits while it is paused, and goes on where it was', async () => {
    const id = await begin()
    expect((await move(id, 'pause')).body.state).toBe('paused')
    await runJobs()
    expect(await read(id)).toMatchObject({ state: 'paused', parcels: { waiting: 3 } })
    expect((await move(id, 'resumption')).body.state).toBe('running')
    await runJobs()
    expect(await read(id)).toMatchObject({ state: 'done', parcels: { waiting: 0 } })
    expect((await move(id, 'pause')).status).toBe(409)
  })

  test('one that stands still is not there for others', async () => {
    const id = await begin()
    expect((await ask('firm', { url: `${here}/reruns/${id}` })).status).toBe(404)
    expect((await ask('stranger', { url: `${here}/reruns/${id}` })).status).toBe(404)
    expect(
      (await ask('reviewer', { url: `${here}/reruns/${id}/parcels?outcome=changed` })).body.items,
    ).toEqual([])
  })
})
