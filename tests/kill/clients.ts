import { randomUUID } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { setTimeout as wait } from 'node:timers/promises'
import type { Dice } from '../forms/dice.ts'
import type { People } from '../support/people.ts'
import { inspectionThatDiffers, permit1974, repair1996 } from '../support/quillback.ts'

/** Something that a client was told is done; the account at the end looks for each. */
export type Acknowledged =
  | { readonly what: 'permit'; readonly id: string; readonly number: string }
  | { readonly what: 'draft' | 'submission'; readonly id: string; readonly remarks: string }
  | { readonly what: 'decision'; readonly id: string; readonly discrepancy: string }
  | { readonly what: 'document'; readonly id: string; readonly job: string; readonly hash: string }
  | { readonly what: 'letter'; readonly id: string; readonly number: string }

export type Ledger = {
  readonly acknowledged: Acknowledged[]
  /** Answers that should never be, in words. */
  readonly wrong: string[]
  /** Requests to be sent once more at the end, with what they were answered. */
  readonly repeats: { readonly request: Sent; readonly answer: unknown }[]
  /** How often an answer was lost and the request was sent again. */
  retries: number
  sent: number
}

type Sent = {
  readonly who: keyof People
  readonly method: 'POST' | 'PUT' | 'GET'
  readonly url: string
  readonly headers: Readonly<Record<string, string>>
  readonly body?: string | Uint8Array
}

export type ClientOptions = {
  readonly origins: readonly string[]
  readonly people: People
  readonly dice: Dice
  readonly ledger: Ledger
  /** Parcel numbers of this client's own. */
  readonly parcels: Iterator<string>
  /** False when no new work is to be begun. */
  readonly goOn: () => boolean
}

const HERE = '/v1/counties/quillback'
const SAMPLE = new URL('../forms/samples/form-1986.pdf', import.meta.url)

/** A client that works until it is told to stop, and never lets go of a request before it was answered. */
export async function work({ origins, people, dice, ledger, parcels, goOn }: ClientOptions): Promise<void> {
  const sample = await readFile(SAMPLE)
  while (goOn()) {
    const { value: parcel, done } = parcels.next()
    if (done) return
    const at = `${HERE}/parcels/${parcel}`
    await permit(at, { ...permit1974, number: `K-${parcel}-1` })
    const late = permit(at, { ...repair1996, number: `K-${parcel}-2` })
    const consequence = await inspection(at)
    await late
    const [change] = consequence?.changes ?? []
    if (change) await decide(change.discrepancy)
    if (dice.chance(0.3)) await paper(sample)
    if (dice.chance(0.3)) await letter(at)
  }

  async function permit(at: string, body: { readonly number: string }): Promise<void> {
    const answer = await post<{ permit: { id: string } }>('reviewer', `${at}/permits`, body, 201)
    if (answer) ledger.acknowledged.push({ what: 'permit', id: answer.permit.id, number: body.number })
  }

  async function inspection(at: string) {
    const remarks = `inspection ${randomUUID()}`
    const body = { ...inspectionThatDiffers, notes: remarks }
    const draft = await post<{ id: string }>('firm', `${at}/findings`, body, 201)
    if (!draft) return undefined
    ledger.acknowledged.push({ what: 'draft', id: draft.id, remarks })
    const url = `${HERE}/findings/${draft.id}/submission`
    const answer = await post<{ consequence: { changes: { discrepancy: string }[] } }>(
      'firm',
      url,
      undefined,
      200,
    )
    if (answer) ledger.acknowledged.push({ what: 'submission', id: draft.id, remarks })
    return answer?.consequence
  }

  async function decide(discrepancy: string): Promise<void> {
    const url = `${HERE}/discrepancies/${discrepancy}/decisions`
    const body = { action: 'accept', reason: 'Seen.' }
    // The late permit may have taken its ground away before it was decided.
    const answer = await post<{ decision: { id: string } }>(
      'reviewer',
      url,
      body,
      201,
      { 'if-match': '*' },
      [409],
    )
    if (answer) ledger.acknowledged.push({ what: 'decision', id: answer.decision.id, discrepancy })
  }

  async function letter(at: string): Promise<void> {
    const answer = await post<{ id: string; number: string }>(
      'agent',
      `${at}/letters`,
      { kind: 'status' },
      201,
    )
    if (answer) ledger.acknowledged.push({ what: 'letter', id: answer.id, number: answer.number })
  }

  async function paper(sample: Uint8Array): Promise<void> {
    const bytes = Buffer.concat([sample, Buffer.from(`\n% ${randomUUID()}\n`)])
    const form = new FormData()
    form.set('file', new Blob([bytes], { type: 'application/pdf' }), 'paper.pdf')
    const written = new Response(form)
    const answer = await send<{ document: { id: string; contentHash: string }; job: string }>(
      {
        who: 'reviewer',
        method: 'POST',
        url: `${HERE}/documents`,
        headers: { 'content-type': written.headers.get('content-type')!, 'idempotency-key': randomUUID() },
        body: new Uint8Array(await written.arrayBuffer()),
      },
      202,
    )
    if (!answer) return
    const { id, contentHash: hash } = answer.document
    ledger.acknowledged.push({ what: 'document', id, job: answer.job, hash })
  }

  async function post<T>(
    who: keyof People,
    url: string,
    body: object | undefined,
    expected: number,
    headers: Readonly<Record<string, string>> = {},
    allowed: readonly number[] = [],
  ): Promise<T | undefined> {
    const type: Record<string, string> = body ? { 'content-type': 'application/json' } : {}
    const request: Sent = {
      who,
      method: 'POST',
      url,
      headers: { ...type, ...headers, 'idempotency-key': randomUUID() },
      ...(body ? { body: JSON.stringify(body) } : {}),
    }
    const answer = await send<T>(request, expected, allowed)
    if (answer && dice.chance(0.2)) ledger.repeats.push({ request, answer })
    return answer
  }

  /** The same request, with its key, to whichever process answers, until one does. */
  async function send<T>(
    request: Sent,
    expected: number,
    allowed: readonly number[] = [],
  ): Promise<T | undefined> {
    for (const end = Date.now() + 120_000; Date.now() < end; await wait(dice.whole(20, 200))) {
      ledger.sent += 1
      const answer = await ask(dice.pick(origins), people, request).catch(() => undefined)
      if (answer?.status === expected) return answer.body as T
      // Come again: the answer is lost, somebody else of us is still at it, or the service says so.
      const again = answer === undefined || answer.status === 503 || answer.type === '/problems/still-working'
      if (answer && allowed.includes(answer.status) && !again) return undefined
      if (!again) {
        ledger.wrong.push(`${request.method} ${request.url}: ${answer.status} ${JSON.stringify(answer.body)}`)
        return undefined
      }
      if (answer?.status === 503 && !(Number(answer.retryAfter) > 0))
        ledger.wrong.push(`503 without Retry-After: ${JSON.stringify(answer)}`)
      ledger.retries += 1
    }
    ledger.wrong.push(`${request.method} ${request.url}: not answered in two minutes`)
    return undefined
  }
}

export async function ask(origin: string, people: People, { who, method, url, headers, body }: Sent) {
  const answer = await fetch(`${origin}${url}`, {
    method,
    headers: { ...headers, authorization: `Bearer ${people[who].token}` },
    signal: AbortSignal.timeout(20_000),
    ...(body === undefined ? {} : { body }),
  } as RequestInit)
  const read = (await answer.json()) as { readonly type?: string }
  const { status } = answer
  return {
    status,
    body: read,
    type: read.type,
    retryAfter: answer.headers.get('retry-after'),
    replayed: answer.headers.get('idempotency-replayed'),
  }
}
