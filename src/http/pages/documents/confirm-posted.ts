import type { FastifyReply, FastifyRequest } from 'fastify'
import { confirmTranscription } from '../../../operations/documents/confirm-transcription.ts'
import { type DocumentRead, readDocumentTaken } from '../../../operations/documents/read-document.ts'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import { readEntry } from '../../../reading/entry/read-entry.ts'
import { answered } from '../../api/answer.ts'
import { permitsConfirmed, transcriptionBody } from '../../api/documents/transcription.ts'
import { counted } from '../words/plain.ts'
import { documentPath } from './addresses.ts'
import { confirmedIn, doneOf } from './confirmed.ts'
import { type Faults, faultsOf, unseenFaults } from './faults.ts'
import type { Returned } from './present.ts'
import { readForm } from './read-form.ts'
import { onToNext, showDocument } from './show-document.ts'
import { partsIn, type Typed, typedBy, versionIn } from './typed.ts'

/**
 * Takes the form of one permit to the operation that a program calls. What can't be done comes back with what was
 * typed; what changed meanwhile is shown beside it.
 */
export async function confirmPosted(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
): Promise<FastifyReply> {
  const { context, actor } = request
  const typed = typedBy(request.body)
  const permit = /^\d{1,4}$/.test(typed.permit ?? '') ? Number(typed.permit) : 0
  const again = (returned: Partial<Returned> & { readonly typed?: Typed }, status: number) =>
    showDocument(request, reply, id, {
      permit,
      returned: { typed, faults: {}, notice: null, isStale: false, ...returned },
      status,
    })
  if (typed.act === 'part') return again({ typed: withOneMore(typed) }, 200)

  const read = answered(await readDocumentTaken(context, actor, id, () => [permit]))
  const version = versionIn(typed)
  const isDone = doneOf(read.transcriptions).has(permit)
  if (version !== read.document.revision || isDone) return stale(request, reply, id, read, typed, again)
  const proposal = read.proposals.get(permit) ?? null
  const more = leftAfter(read, permit)
  const form = readForm(typed, proposal, permit, more)
  const unseen = unseenFaults(typed, proposal)
  const parsed = readEntry(transcriptionBody, form.body)
  if (!parsed.ok || Object.keys(unseen).length > 0) {
    const faults = parsed.ok ? {} : faultsOf(parsed.error, form)
    return again(toFix({ ...unseen, ...(await parcelFault(request, typed)), ...faults }), 422)
  }
  const asked = { document: id, version, permits: permitsConfirmed(parsed.value), more, body: form.body }
  const made = await confirmTranscription(context, actor, asked)
  if (made.ok) {
    if (more) return reply.redirect(`${documentPath(actor.county, id)}?done=${id}`, 303)
    return onToNext(request, reply, id)
  }
  switch (made.error.why) {
    case 'invalid':
      return again(toFix(faultsOf(made.error.issues, form)), 422)
    case 'conflict':
      return again({ notice: made.error.says }, 409)
    case 'stale':
      return stale(
        request,
        reply,
        id,
        answered(await readDocumentTaken(context, actor, id, () => [permit])),
        typed,
        again,
      )
    default:
      return answered(made)
  }
}

/** Reported with all other faults, not after they are fixed. */
async function parcelFault({ context, actor }: FastifyRequest, typed: Typed): Promise<Faults> {
  const number = typed['/parcel']?.trim() ?? ''
  if (number === '' || (await readParcel(context, actor, number)).ok) return {}
  return { '/parcel': `There is no parcel ${number} in this county.` }
}

const toFix = (faults: Faults): Partial<Returned> => ({
  faults,
  notice: `Nothing is confirmed yet. Check ${counted(Object.keys(faults).length, 'value')} below. What you typed is still there.`,
})

/** A name that no field of a part has keeps a new part in the form until something is written into it. */
const withOneMore = (typed: Typed): Typed => ({
  ...typed,
  parts: String(Math.min(100, Math.max(partsIn(typed), Number(typed.parts) || 0) + 1)),
})

const leftAfter = ({ document, transcriptions }: DocumentRead, permit: number): boolean => {
  const done = doneOf(transcriptions)
  return document.permits.some((_, index) => index !== permit && !done.has(index))
}

const CHANGED: Readonly<Record<string, string>> = {
  confirmed: 'Someone else confirmed this document while you had it open.',
  'set-aside': 'Someone else set this document aside while you had it open.',
}

/** Somebody else was faster. A form sent twice, by two presses of a button, did its work the first time. */
function stale(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
  read: DocumentRead,
  typed: Typed,
  again: (returned: Partial<Returned>, status: number) => Promise<FastifyReply>,
): Promise<FastifyReply> {
  const permit = Number(typed.permit) || 0
  const last = read.transcriptions.at(-1)
  const sent = readForm(typed, read.proposals.get(permit) ?? null, permit, false).body
  const isSame = last?.confirmedBy === request.actor.account && sameBody(last.body, sent)
  if (isSame) return onToNext(request, reply, id)
  const isDone = confirmedIn(read.transcriptions).some(({ proposal }) => (proposal ?? 0) === permit)
  const says = isDone
    ? 'Someone else confirmed this permit while you had it open.'
    : (CHANGED[read.document.state] ?? 'Someone else changed this document while you had it open.')
  const notice = `${says} Your values were not confirmed. They are kept below, next to the values as they are now.`
  return again({ notice, isStale: true }, 412)
}

const permitsOf = (body: unknown): string =>
  JSON.stringify((body as { readonly permits?: unknown } | null)?.permits, sorted)
const sameBody = (one: unknown, other: unknown): boolean => permitsOf(one) === permitsOf(other)

/** Keys in one order: the database keeps none. */
const sorted = (_: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)))
    : value
