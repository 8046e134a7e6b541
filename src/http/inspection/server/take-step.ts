import type { FastifyReply, FastifyRequest } from 'fastify'
import {
  type InspectionPrepared,
  prepareInspection,
} from '../../../operations/findings/prepare-inspection.ts'
import { submitFindings } from '../../../operations/findings/submit-findings.ts'
import type { Refusal } from '../../../operations/refusal.ts'
import { formFaultWords } from '../../../words/form-faults.ts'
import { answered } from '../../api/answer.ts'
import { problem } from '../../problem.ts'
import { inspectionPath } from '../addresses.ts'
import { placedFaults } from '../form/placed-faults.ts'
import { type Faults, readForm } from '../form/read.ts'
import { type InspectionForm, withoutPart } from '../form/typed.ts'
import { withAdded, withStep } from '../form/with-step.ts'
import { clashes, settled } from '../sending/clashes.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { neighbors, stepsOf } from '../sheet/steps.ts'
import { sendConflict, sendInspection } from './page.ts'
import { amend, save } from './save.ts'
import { savedForm, sheetOf, tidyForm } from './show.ts'
import { type Sent, sentBy } from './typed-by.ts'

/**
 * Takes one step of the plain form: saves it and goes on. What can't be read comes back with what was typed and the
 * reasons beside it; what was typed over somebody's newer copy comes back beside that copy.
 */
export async function takeStep(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
): Promise<FastifyReply> {
  const { context, actor, body } = request
  const prepared = answered(await prepareInspection(context, actor, asked))
  const sent = sentBy(body)
  const go = (step: string) => reply.redirect(inspectionPath(actor.county, prepared.parcel.number, step), 303)
  if (sent.to === 'again') return go('start')
  if (sent.to === 'keep-theirs') return go(sent.step)
  if (sent.to === 'amend') {
    if (prepared.draft) return go('start')
    if (!prepared.submitted) throw problem('not-found')
    answered(await amend(context, actor, prepared.submitted))
    return go('start')
  }

  const sheet = sheetOf(actor.county, prepared)
  const saved = savedForm(prepared, sheet)
  const typed = withStep(saved, sheet, sent.step, sent.typed)
  if (sent.draft !== null && prepared.draft === null) {
    return sendInspection(request, reply, prepared, {
      step: sent.step,
      form: typed,
      notice: HANDED_IN,
      status: 409,
    })
  }
  const stale =
    prepared.draft !== null && (sent.draft !== prepared.draft.id || sent.revision !== prepared.draft.revision)
  if (stale && clashes(tidyForm(typed, sheet), saved, null).length > 0)
    return weigh(request, reply, prepared, sent, typed, saved)
  const form = sent.to === 'settle' ? settled(tidyForm(typed, sheet), saved, chosenIn(body)) : typed
  return takeForm(request, reply, prepared, sheet, sent, form)
}

const chosenIn = (body: unknown) => (clash: string) =>
  (body as Record<string, unknown>)[`keep:${clash}`] === 'mine' ? 'mine' : ('theirs' as const)

const weigh = (
  request: FastifyRequest,
  reply: FastifyReply,
  prepared: InspectionPrepared,
  { step, typed }: Sent,
  mine: InspectionForm,
  theirs: InspectionForm,
) => {
  const { id = '', revision = 0 } = prepared.draft ?? {}
  return sendConflict(request, reply, prepared, {
    mine,
    theirs,
    carried: { ...typed, step, draft: id, revision: String(revision) },
  })
}

async function takeForm(
  request: FastifyRequest,
  reply: FastifyReply,
  prepared: InspectionPrepared,
  sheet: InspectionSheet,
  sent: Sent,
  typed: InspectionForm,
): Promise<FastifyReply> {
  const { context, actor } = request
  const { step } = sent
  const again = (faults: Faults, notice?: string) =>
    sendInspection(request, reply, prepared, {
      step,
      form: typed,
      faults,
      status: 422,
      ...(notice ? { notice } : {}),
    })

  if (sent.to === 'remove')
    return sendInspection(request, reply, prepared, { step, form: typed, notice: ASKS_TO_REMOVE, asks: true })
  const added = sent.to === 'add' ? withAdded(typed, sheet, body(request)) : null
  if (added && 'fault' in added) return again({ more: { newKind: added.fault } })
  const form = added ? added.form : sent.to === 'remove-sure' ? withoutPart(typed, step) : typed
  const { record, faults } = readForm(form)
  if (!record) return again(faults, faults[step] ? undefined : elsewhere(sheet, form, faults))

  const draft = await save(context, actor, prepared, record)
  if (!draft.ok) return refused(request, reply, prepared, sent, typed, draft.error, again)
  const steps = stepsOf(sheet, form)
  const { back, next } = neighbors(steps, step)
  const go = (to: string | null) =>
    reply.redirect(inspectionPath(actor.county, sheet.parcel.number, to ?? 'start'), 303)
  if (added) return go(added.step)
  if (sent.to === 'remove-sure') return go('more')
  if (sent.to === 'back') return go(back)
  if (step !== 'review' || sent.to === 'settle') return go(sent.to === 'settle' ? step : next)
  const handed = await submitFindings(context, actor, draft.value.id, draft.value.revision)
  if (!handed.ok) return refused(request, reply, prepared, sent, typed, handed.error, again)
  return go('sent')
}

const HANDED_IN =
  'This inspection was already submitted from another device. What you typed is still here but not saved. ' +
  'Amend the inspection and enter it there.'
const ASKS_TO_REMOVE = 'Remove it and everything noted about it?'

const body = (request: FastifyRequest): Readonly<Record<string, string>> =>
  (request.body ?? {}) as Readonly<Record<string, string>>

/** What is wrong is on another step: saving waits until it is corrected there. */
const elsewhere = (sheet: InspectionSheet, form: InspectionForm, faults: Faults): string =>
  `Not saved yet. Fix this first: ${stepsOf(sheet, form)
    .filter(({ name }) => faults[name])
    .map(
      ({ name, title }) =>
        `${title} (${Object.values(faults[name] ?? {})
          .map(formFaultWords)
          .join('; ')})`,
    )
    .join(', ')}.`

async function refused(
  request: FastifyRequest,
  reply: FastifyReply,
  prepared: InspectionPrepared,
  sent: Sent,
  typed: InspectionForm,
  refusal: Refusal,
  again: (faults: Faults, notice?: string) => Promise<FastifyReply>,
): Promise<FastifyReply> {
  if (refusal.why === 'invalid') {
    const faults = placedFaults(refusal.issues, typed)
    const elsewhere = Object.entries(faults).flatMap(([step, own]) =>
      step === sent.step ? [] : Object.values(own),
    )
    return again(faults, elsewhere.length === 0 ? undefined : elsewhere.map(formFaultWords).join('; '))
  }
  if (refusal.why !== 'stale' && refusal.why !== 'conflict') return answered({ ok: false, error: refusal })
  // Somebody was quicker, between the reading of this request and its writing: look at what there is now.
  const now = answered(await prepareInspection(request.context, request.actor, prepared.parcel.id))
  const sheet = sheetOf(request.actor.county, now)
  const saved = savedForm(now, sheet)
  if (!now.draft) return again({}, HANDED_IN)
  // A button pressed twice: what it meant to save is there.
  if (clashes(tidyForm(typed, sheet), saved, null).length === 0) {
    const { next } = neighbors(stepsOf(sheet, saved), sent.step)
    return reply.redirect(inspectionPath(request.actor.county, sheet.parcel.number, next ?? 'start'), 303)
  }
  return weigh(request, reply, now, sent, typed, saved)
}
