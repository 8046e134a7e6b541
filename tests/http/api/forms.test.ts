import { sql } from 'kysely'
import { describe, expect, test } from 'vitest'
import { transact } from '../../../src/store/database/transact.ts'
import { makeForm, type Paper } from '../../forms/make.ts'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'
import { jobRunner } from '../../support/run-jobs.ts'
import { uploading } from '../../support/upload.ts'

const service = await testApp()
const { services, ask } = service
const runJobs = jobRunner(service)
const here = '/v1/counties/quillback'
const forms = `${here}/forms`

/** Takes a paper in and reads it. */
async function readIn(seed: number, layout: 'register-1949' | 'letter' = 'register-1949') {
  const made = await makeForm([{ layout, seed }])
  const file = { bytes: made.pdf, name: `${seed}.pdf` }
  const { document } = (await ask('reviewer', await uploading(`${here}/documents`, { file }))).body
  await runJobs()
  return { id: document.id as string, paper: made.papers[0]! }
}
const documentOf = async (id: string) => ({
  ...(await ask('reviewer', { url: `${here}/documents/${id}` })).body,
  proposals: (await ask('reviewer', { url: `${here}/documents/${id}/proposals` })).body.items,
})

/** Confirms what a paper shows, on a parcel of its own, and lets it teach. */
async function confirmed(seed: number, layout?: 'letter') {
  const { id, paper } = await readIn(seed, layout)
  const { number } = await newParcel(services)
  const permits = [{ parcel: number, proposal: 0, entry: shownOf(paper) }]
  const url = `${here}/documents/${id}/transcription`
  const { status, body } = await ask('reviewer', { method: 'POST', url, body: { permits } })
  expect([status, body]).toEqual([201, expect.anything()])
  await runJobs()
  return id
}

/** What the form shows and no more. */
const shownOf = ({ truth, shown }: Paper) => {
  const { components, reference: _, ...own } = truth.entry
  return {
    ...own,
    components: components.map((component, index) =>
      Object.fromEntries(
        Object.entries(component).filter(
          ([key]) => ['tag', 'kind', 'action'].includes(key) || shown.has(`/components/${index}/${key}`),
        ),
      ),
    ),
  }
}
const post = (url: string, body: object, headers: Record<string, string> = {}) =>
  ask('reviewer', { method: 'POST', url, body, headers })
const list = async (state: string) => (await ask('reviewer', { url: `${forms}?state=${state}` })).body.items
/** How many fields were read at the places of a form. */
const byForm = (document: { proposals: { fields: { how: string }[] }[] }) =>
  document.proposals[0]!.fields.filter(({ how }) => how === 'family').length

describe('a form that papers teach', async () => {
  const waiting = await readIn(71)
  await confirmed(61)
  await confirmed(62)
  await confirmed(90, 'letter')
  const before = await list('proposed')
  const third = await confirmed(63)
  const [form] = await list('proposed')

  test('is proposed after the third confirmed paper of it, and not before', async () => {
    expect(before).toEqual([])
    expect(form).toMatchObject({ state: 'proposed', papers: 3, changedBy: null, revision: 1 })
    expect(form.name).toMatch(/REGISTER OF PRIVATE SEWERAGE/)
    const { body } = await ask('reviewer', { url: `${forms}/${form.id}` })
    expect(body.taughtBy).toHaveLength(3)
    expect(body.taughtBy.map((it: { document: string }) => it.document)).toContain(third)
    expect(body.shownOn.pages).toEqual([1])
    const asks = body.taught.sheets[0].fields.map((it: { ask: string }) => it.ask)
    expect(asks).toEqual(expect.arrayContaining(['number', 'issuedOn', 'kind', 'capacity', 'bedrooms']))
  })

  test('holds no value of any paper', async () => {
    const { body } = await ask('reviewer', { url: `${forms}/${form.id}/export` })
    expect(JSON.stringify(body)).not.toMatch(/\d\d-\d{4}-\d{4}|\b(?:19|20)\d\d\b|\d,\d{3}/)
  })

  test('reads nothing until a person takes it up, and then the papers that wait and those that come', async () => {
    const before = await documentOf(waiting.id)
    expect([before.proposals[0].family, byForm(before)]).toEqual([null, 0])
    const url = `${forms}/${form.id}/activation`
    expect((await post(url, {}, { 'if-match': '"r9"' })).status).toBe(412)
    const taken = await post(url, { name: 'Register, 1949' }, { 'if-match': '"r1"' })
    expect([taken.status, taken.body.form.state, taken.body.form.name]).toEqual([
      200,
      'in-force',
      'Register, 1949',
    ])
    expect((await post(url, {})).status).toBe(409)
    await runJobs()
    const again = await documentOf(waiting.id)
    expect(again.proposals[0].family).toBe('Register, 1949')
    // What links read as surely keeps their name: the form's own are what it reads better.
    expect(byForm(again)).toBeGreaterThan(0)
    const next = await readIn(72)
    expect((await documentOf(next.id)).proposals[0].family).toBe('Register, 1949')
    const other = await documentOf((await readIn(91, 'letter')).id)
    expect(other.proposals[0].family).toBeNull()
  })

  test('grows no more once it is in force: a person looked at it as it is', async () => {
    await confirmed(64)
    const { body } = await ask('reviewer', { url: `${forms}/${form.id}` })
    expect([body.taughtBy.length, body.papers]).toEqual([3, 3])
    expect(await list('proposed')).toEqual([])
  })

  test('is withdrawn: what waits is proposed as it was before, and it is not proposed again', async () => {
    const { status, body } = await post(`${forms}/${form.id}/withdrawal`, {})
    expect([status, body.form.state]).toEqual([200, 'withdrawn'])
    await runJobs()
    const again = await documentOf(waiting.id)
    expect(again.proposals[0].family).toBeNull()
    expect(byForm(again)).toBe(0)
    await confirmed(65)
    expect(await list('proposed')).toEqual([])
  })

  test('goes to another county as a file and waits there to be taken up', async () => {
    const exported = (await ask('reviewer', { url: `${forms}/${form.id}/export` })).body
    const { status, body } = await post(forms, exported)
    expect([status, body.state, body.fields]).toEqual([201, 'proposed', form.fields])
    const spoilt = { ...exported, taught: { ...exported.taught, sheets: [{ marks: [] }] } }
    const refused = await post(forms, spoilt)
    expect(refused.status).toBe(422)
    expect(refused.body.errors[0].pointer).toMatch(/^\/taught\/sheets\/0/)
  })

  test('every change of it is in the audit', async () => {
    const events = await transact(services.database, service.people.reviewer, (tx) =>
      tx
        .selectFrom('event')
        .select(['kind', 'role'])
        .where('subject', '=', form.id as string)
        .orderBy('happened_at')
        .execute(),
    )
    expect(events.map(({ kind, role }) => [kind, role])).toEqual([
      ['form-proposed', 'service'],
      ['form-taken-up', 'reviewer'],
      ['form-withdrawn', 'reviewer'],
    ])
    const { rows } = await transact(services.database, service.people.reviewer, (tx) =>
      sql<{ act: string; role: string }>`
        select act, role from audit where county = 'quillback' and kind = 'taught_form' and record like ${`%${form.id}%`}
        order by number`.execute(tx),
    )
    expect(rows).toEqual([
      { act: 'made', role: 'service' },
      { act: 'changed', role: 'reviewer' },
      { act: 'changed', role: 'reviewer' },
    ])
  })

  test('drops a field that was learned wrongly once two confirmed papers contradict it, and says so', async () => {
    const { taught } = (await ask('reviewer', { url: `${forms}/${form.id}/export` })).body
    const [sheet] = taught.sheets
    const at = (name: string) => sheet.fields.find(({ ask: asked }: { ask: string }) => asked === name)
    const wrong = { ...at('issuedOn'), ask: 'approvedOn' }
    const fields = [...sheet.fields.filter((it: object) => it !== at('approvedOn')), wrong]
    const brought = await post(forms, {
      name: 'Spoilt',
      taught: { ...taught, sheets: [{ ...sheet, fields }] },
    })
    const own = `${forms}/${brought.body.id}`
    await post(`${own}/activation`, {})
    const heldOf = async (name: string) =>
      (await ask('reviewer', { url: own })).body.held.find((it: { ask: string }) => it.ask === name)
    await confirmed(66)
    expect(await heldOf('approvedOn')).toMatchObject({ agreed: 0, contradicted: 1, dropped: false })
    await confirmed(67)
    expect(await heldOf('approvedOn')).toMatchObject({ agreed: 0, contradicted: 2, dropped: true })
    expect(await heldOf('issuedOn')).toMatchObject({ agreed: 2, contradicted: 0, dropped: false })
    const out = (await ask('reviewer', { url: `${own}/export` })).body.taught.sheets[0].fields
    expect(out.map((it: { ask: string }) => it.ask)).not.toContain('approvedOn')
    const headers = { authorization: `Bearer ${service.people.reviewer.token}` }
    expect((await service.app.inject({ url: own.replace('/v1', ''), headers })).body).toContain(
      'no longer read',
    )
    // What waits and what comes is read without it; the place that holds the issue date takes nothing any more.
    const next = await readIn(73)
    const { proposals } = await documentOf(next.id)
    expect(proposals[0].family).toBe('Spoilt')
    expect(proposals[0].entry.approvedOn).toBe(next.paper.truth.entry.approvedOn)
    await post(`${own}/withdrawal`, {})
  })
})
