import { readFile } from 'node:fs/promises'
import type { InjectOptions } from 'fastify'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { resultView } from '../../../src/http/pages/rules-trial/view.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { tryRules } from '../../../src/operations/rule-trials/try-rules.ts'
import { testApp } from '../../support/app.ts'
import { newParcel, permit1974, permitRecord } from '../../support/quillback.ts'
import { jobRunner } from '../../support/run-jobs.ts'

const service = await testApp()
const { app, services, people } = service
const runJobs = jobRunner(service)
const here = '/counties/quillback'
const parcel = await newParcel(services, '07-0412-0031')
must(await enterPermit(services, people.reviewer, parcel.number, permitRecord(permit1974)))
const tanks = await readFile(
  new URL('../../../src/rules/packs/public-health-service/tanks.yaml', import.meta.url),
  'utf8',
)

const ask = (request: InjectOptions, who: 'reviewer' | 'firm' = 'reviewer') =>
  app.inject({
    ...request,
    headers: { accept: 'text/html', authorization: `Bearer ${people[who].token}`, ...request.headers },
  })
const post = (url: string, fields: Record<string, string>) =>
  ask({
    method: 'POST',
    url,
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    payload: new URLSearchParams(fields).toString(),
  })

describe('the page where other rules are tried', () => {
  test('begins with a pack that is in use', async () => {
    const { statusCode, body } = await ask({ url: `${here}/rules/trial?of=public-health-service/tanks` })
    expect([statusCode, body.includes('bedrooms: 3, gal: 900')]).toEqual([200, true])
  })

  test('keeps what was typed and tells every fault by its line', async () => {
    const { statusCode, body } = await post(`${here}/rules/trial`, {
      yaml: tanks.replace('by: bedrooms', 'by: <b>baths</b>'),
    })
    expect(statusCode).toBe(422)
    expect(body).toMatch(/line \d+, column \d+/)
    expect(body).toContain('by: &lt;b&gt;baths&lt;/b&gt;')
  })

  test('goes to a page that says how far it is', async () => {
    const sent = await post(`${here}/rules/trial`, { yaml: tanks })
    expect([sent.statusCode, sent.headers.location]).toEqual([
      303,
      expect.stringMatching(/\/rules\/trials\//),
    ])
    const data = { yaml: tanks.replace('bedrooms: 3, gal: 900', 'bedrooms: 3, gal: 1200') }
    const run = {
      id: 'x',
      actor: people.reviewer,
      data,
      report: async () => {},
      signal: new AbortController().signal,
    }
    const page = resultView('quillback', await tryRules(services, run)).text
    expect(page).toContain('By decade of the first approved permit')
    expect(page).toContain('07-0412-0031')
  })
})

describe('the page of imports', () => {
  const edge = 'edge-of-a-part'
  const part = (head: string, body: string) =>
    `--${edge}\r\ncontent-disposition: form-data; ${head}\r\n\r\n${body}\r\n`
  const send = (text: string) =>
    ask({
      method: 'POST',
      url: `${here}/imports`,
      headers: { 'content-type': `multipart/form-data; boundary=${edge}` },
      payload: `${part('name="kind"', 'permits')}${part('name="file"; filename="index.csv"', text)}--${edge}--\r\n`,
    })

  test('takes a file, lets its columns be mended, runs it, and gives back what was not taken', async () => {
    const sent = await send('Ref,Where,What\n80-001,07-0412-0031,INST\n80-002,nowhere,INST\n')
    expect(sent.statusCode).toBe(303)
    const at = String(sent.headers.location)
    expect((await ask({ url: at })).body).toContain('no column fills number')
    const wrong = await post(`${at}/mapping`, {
      version: '1',
      'to.0': 'color',
      'to.1': 'parcel',
      'to.2': 'kind',
    })
    expect([wrong.statusCode, wrong.body.includes('nothing that a file of permits fills')]).toEqual([
      422,
      true,
    ])
    const fields = {
      version: '1',
      'to.0': 'number',
      'to.1': 'parcel',
      'to.2': 'kind',
      'values.2': 'INST = new',
    }
    expect((await post(`${at}/mapping`, fields)).statusCode).toBe(303)
    expect((await post(`${at}/run`, {})).statusCode).toBe(303)
    await runJobs()
    const { body } = await ask({ url: at })
    expect(body).toContain('is done')
    expect(body).toContain('1 added')
    expect(body).toMatch(/Line 3: Where \(&quot;nowhere&quot;\)/)
  })

  test('says why a file is none', async () => {
    const { statusCode, body } = await send('')
    expect([statusCode, body.includes('The file is empty')]).toEqual([422, true])
  })

  test('is there for reviewers alone', async () => {
    for (const page of ['imports', 'rules/trial'])
      expect((await ask({ url: `${here}/${page}` }, 'firm')).statusCode).toBe(404)
  })
})
