import type { KeptInspection } from '../sending/kept-inspection.ts'
import { nextRequest } from '../sending/next-request.ts'
import { type Came, type Telling, takeAnswer } from '../sending/take-answer.ts'
import { changeInspection, forgetPhoto, type KeptPhoto, keepPhoto, keptInspection, photosOf } from './kept.ts'

type With = {
  readonly telling: Telling
  readonly readable: (inspection: KeptInspection) => boolean
  /** Told after every step, with what is kept by then. */
  readonly onStep: (inspection: KeptInspection) => void
  readonly onPhoto: (photo: KeptPhoto, sent: string | null) => void
}

/** How a round ended: everything is there, or why not. */
export type Round = 'all-sent' | 'no-signal' | 'waiting'

/**
 * Sends all that is to be sent of one inspection, one request after the other: each is kept before it leaves. Of several
 * tabs one sends; the others leave it to it.
 */
export const sendInspection = (name: string, using: With): Promise<Round> =>
  navigator.locks.request(`asfound-send-${name}`, { ifAvailable: true }, async (lock) =>
    lock ? round(name, using) : 'waiting',
  )

async function round(name: string, using: With): Promise<Round> {
  for (;;) {
    const inspection = await changeInspection(name, (it) => ({
      ...it,
      request: nextRequest(it, using.readable(it)),
    }))
    if (!inspection) return 'waiting'
    if (!inspection.request) break
    using.onStep(inspection)
    const came = await answerTo(inspection)
    const after = await changeInspection(name, (it) =>
      takeAnswer(it, came, using.telling, new Date().toISOString()),
    )
    if (after) using.onStep(after)
    if (came === null || came.status >= 500 || came.status === 429 || came.status === 401) return 'no-signal'
  }
  return sendPhotos(name, using)
}

async function answerTo({ request }: KeptInspection): Promise<Came> {
  if (!request) return null
  const { method, path, key, match, body } = request
  const headers = {
    ...(body === null ? {} : { 'content-type': 'application/json' }),
    ...(key === null ? {} : { 'idempotency-key': key }),
    ...(match === null ? {} : { 'if-match': match }),
  }
  return asking(path, { method, headers, body }, 30_000)
}

/** Null where nothing came back, or not as a whole. */
async function asking(path: string, init: RequestInit, patienceMs: number): Promise<Came> {
  try {
    const response = await fetch(path, { ...init, signal: AbortSignal.timeout(patienceMs) })
    const isJson = /json/.test(response.headers.get('content-type') ?? '')
    const body: unknown = isJson ? await response.json() : null
    return { status: response.status, etag: response.headers.get('etag'), body }
  } catch {
    return null
  }
}

/** Pictures follow the numbers, one at a time; one that was not taken does not keep the others. */
async function sendPhotos(name: string, { onPhoto }: With): Promise<Round> {
  const inspection = await keptInspection(name)
  if (!inspection) return 'waiting'
  const findings = inspection.done?.findings ?? inspection.base?.id
  const waiting = (await photosOf(inspection)).filter(({ trouble }) => trouble === null)
  if (!findings) return waiting.length > 0 ? 'waiting' : 'all-sent'
  for (const photo of waiting) {
    const path = `/v1/counties/${encodeURIComponent(inspection.county)}/findings/${findings}/photos`
    const came = await asking(
      path,
      { method: 'POST', headers: { 'idempotency-key': photo.id }, body: formFor(photo) },
      300_000,
    )
    if (came === null || came.status >= 500 || [401, 408, 409, 429].includes(came.status)) return 'no-signal'
    if (came.status === 201) {
      await forgetPhoto(photo.id)
      onPhoto(photo, (came.body as { readonly id: string }).id)
    } else {
      const { errors, detail } = came.body as { errors?: readonly { message: string }[]; detail?: string }
      const kept = { ...photo, trouble: errors?.[0]?.message ?? detail ?? `refused (${came.status})` }
      await keepPhoto(kept)
      onPhoto(kept, null)
    }
  }
  return 'all-sent'
}

function formFor({ bytes, type, component, takenAt, keepPlace, place }: KeptPhoto): FormData {
  const form = new FormData()
  if (component !== null) form.set('component', component)
  form.set('takenAt', takenAt)
  form.set('keepPlace', String(keepPlace))
  if (place) for (const [name, value] of Object.entries(place)) form.set(name, String(value))
  form.set('photo', new Blob([bytes], { type }), 'photo')
  return form
}
