import { Readable } from 'node:stream'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { describe, expect, test, vi } from 'vitest'
import { must } from '../../src/base/result.ts'
import { readPaper } from '../../src/operations/documents/read-paper.ts'
import { takeInDocument } from '../../src/operations/documents/take-in-document.ts'
import { asService } from '../../src/store/database/actor.ts'
import { transact } from '../../src/store/database/transact.ts'
import { keepPage } from '../../src/store/document-pages.ts'
import { changeDocument } from '../../src/store/documents.ts'
import { testApp } from '../support/app.ts'
import { typedPdf, typedPermit } from '../support/dense-pdf.ts'
import { pictureWith } from '../support/pictures.ts'
import { inspectionThatAgrees, newParcel } from '../support/quillback.ts'

const NEVER_ENDS = fileURLToPath(new URL('../support/never-ends.ts', import.meta.url))
/** As long as each of them is left to it: the machine is as busy as they make it. */
const LEFT_MS = 3_000

// Every child that reads what was sent does its work for ever.
vi.mock('../../src/scan/bounded-child.ts', async (load) => {
  const real = await load<typeof import('../../src/scan/bounded-child.ts')>()
  const runBounded: typeof real.runBounded = (options) =>
    real.runBounded({
      ...options,
      script: NEVER_ENDS,
      mayRead: [...options.mayRead, NEVER_ENDS],
      firstMs: LEFT_MS,
    })
  return { ...real, runBounded }
})

const { app, services, people, ask } = await testApp({ settings: { ANSWERS: 'fast' } })
const origin = await app.listen({ host: '127.0.0.1', port: 0 })
const here = '/v1/counties/quillback'
const parcel = await newParcel(services)
const findings = (
  await ask('firm', {
    method: 'POST',
    url: `${here}/parcels/${parcel.number}/findings`,
    body: inspectionThatAgrees,
  })
).body.id

/** How long each answer took while `work` went on, by what was asked, milliseconds, the slowest last. */
async function meanwhile(work: () => readonly Promise<unknown>[]) {
  const under = work()
  const until = performance.now() + 0.8 * LEFT_MS
  const took: Record<string, number[]> = { live: [], 'sign-in': [], status: [] }
  const timed = async (what: string, path: string, init?: RequestInit) => {
    const from = performance.now()
    const { status } = await fetch(`${origin}${path}`, { redirect: 'manual', ...init })
    took[what]!.push(performance.now() - from)
    return status
  }
  while (performance.now() < until) {
    expect(await timed('live', '/health/live')).toBe(200)
    const form = new URLSearchParams({ name: 'nobody.here', password: 'not the password of anybody' })
    const headers = { origin, 'content-type': 'application/x-www-form-urlencoded' }
    expect(await timed('sign-in', '/sign-in', { method: 'POST', body: form, headers })).not.toBe(503)
    const authorization = `Bearer ${people.agent.token}`
    const status = await timed('status', `${here}/parcels/${parcel.number}/status`, {
      headers: { authorization },
    })
    expect(status).toBe(200)
    await wait(40)
  }
  await Promise.all(under)
  return Object.fromEntries(Object.entries(took).map(([what, ms]) => [what, Math.max(...ms)]))
}

describe('while children never end, everybody else is answered', () => {
  test('eight photos are opened', async () => {
    const form = new FormData()
    form.set('photo', new Blob([new Uint8Array(await pictureWith())], { type: 'image/jpeg' }), 'a.jpg')
    const body = new Response(form)
    const payload = Buffer.from(await body.clone().arrayBuffer())
    const headers = {
      authorization: `Bearer ${people.firm.token}`,
      'content-type': body.headers.get('content-type')!,
    }
    const send = () =>
      fetch(`${origin}${here}/findings/${findings}/photos`, { method: 'POST', headers, body: payload })
    const sent: Promise<Response>[] = []
    const slowest = await meanwhile(() => {
      sent.push(...Array.from({ length: 3 }, send))
      return [sent[0]!]
    })
    expect((await sent[0])!.status).toBe(422)
    expect(slowest.live).toBeLessThan(1_000)
    expect(slowest['sign-in']).toBeLessThan(2_000)
    expect(slowest.status).toBeLessThan(1_000)
    await Promise.all(sent)
  })

  test('papers are read, drawn and proposed from, and rules are read', async () => {
    const { reviewer } = people
    const take = async (number: number) => {
      const kept = await services.files.keep(Readable.from([typedPdf([typedPermit(number)])]))
      const paper = { kept, mediaType: 'application/pdf', fileName: null, parcel: null }
      return must(await takeInDocument(services, reviewer, paper)).document.id
    }
    const [read, cut] = [await take(1), await take(2)]
    const words = {
      page: 1,
      widthPt: 612,
      heightPt: 792,
      turn: 0,
      levelDegrees: 0,
      readBy: 'text-layer',
    } as const
    await transact(services.database, asService(reviewer), async (tx) => {
      await keepPage(tx, reviewer.county, cut, { ...words, words: [], secondWords: null })
      await changeDocument(tx, reviewer.county, cut, { state: 'proposed', pages: 1 })
    })
    const run = { id: read, actor: reviewer, data: { document: read }, report: async () => {} }
    const signal = new AbortController().signal
    const post = (path: string, body: object) =>
      ask('reviewer', { method: 'POST', url: `${here}${path}`, body })
    const yaml = 'pack: quillback/code\njurisdiction: { kind: county, name: Quillback County }\n'
    let answers: Promise<unknown>[] = []
    const slowest = await meanwhile(() => {
      answers = [
        readPaper(services, { ...run, signal }),
        post(`/documents/${cut}/cuts`, { begins: [1] }),
        ask('reviewer', { url: `${here}/documents/${cut}/pages/1.png` }),
        post('/rules/trial', { yaml }),
      ]
      return answers
    })
    const [paper, cutting, drawn, tried] = await Promise.all(answers)
    expect(paper).toMatchObject({ state: 'failed' })
    expect(cutting).toMatchObject({ status: 409 })
    expect(drawn).toMatchObject({ status: 409 })
    expect(tried).toMatchObject({ status: 422 })
    expect(slowest.live).toBeLessThan(1_000)
    expect(slowest['sign-in']).toBeLessThan(2_000)
    expect(slowest.status).toBeLessThan(1_000)
  })
})
