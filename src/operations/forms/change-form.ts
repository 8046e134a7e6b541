import { ok } from '../../base/result.ts'
import type { TaughtForm } from '../../reading/family/taught-form.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { hashOf } from '../../store/hash.ts'
import { changeForm, type FormOnFile, formById, insertForm, lockForm } from '../../store/taught-forms.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'

type Looked = { readonly form: string; readonly version: number | undefined }

export type FormChanged = { readonly form: FormOnFile; readonly job: string }

const MOST_LETTERS = 80

/** One line of words; undefined where it is none. */
function nameFrom(typed: string): string | undefined {
  const name = typed.replaceAll(/\s+/g, ' ').trim()
  const isLine = name !== '' && name.length <= MOST_LETTERS && name.isWellFormed()
  return isLine && !/[\u0000-\u001f\u007f]/.test(name) ? name : undefined
}
const NO_NAME = { pointer: '/name', message: `write a name of at most ${MOST_LETTERS} characters` }

/** Puts a form in force, under a name that a person gives it: papers that wait are read by it, and all that come. */
export const activateForm = (
  context: OperationContext,
  actor: Person,
  { name, ...looked }: Looked & { readonly name: string | undefined },
): Promise<Answer<FormChanged>> => {
  const given = name === undefined ? undefined : nameFrom(name)
  if (name !== undefined && given === undefined) return Promise.resolve(invalid(NO_NAME))
  return change(context, actor, looked, {
    to: 'in-force',
    ...(given === undefined ? {} : { name: given }),
    kind: 'form-taken-up',
    refusal: 'This layout is already in use.',
  })
}

/** Takes a form out of force, or a proposed one off the list: nothing is read by it any more, and it is kept. */
export const withdrawForm = (
  context: OperationContext,
  actor: Person,
  looked: Looked,
): Promise<Answer<FormChanged>> =>
  change(context, actor, looked, {
    to: 'withdrawn',
    kind: 'form-withdrawn',
    refusal: 'This layout is already retired.',
  })

/** Takes in a form that was exported elsewhere. It waits to be taken up as one that was learned here does. */
export const bringForm = (
  context: OperationContext,
  actor: Person,
  { name, taught }: { readonly name: string; readonly taught: TaughtForm },
): Promise<Answer<FormOnFile>> => {
  const given = nameFrom(name)
  if (given === undefined) return Promise.resolve(invalid(NO_NAME))
  return transact(context.database, actor, async (tx) => {
    const { county, account } = actor
    const id = context.newId()
    const at = context.clock()
    await insertForm(tx, county, {
      id,
      name: given,
      taught,
      shownOn: null,
      shownPages: [],
      changedBy: account,
      at,
    })
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind: 'form-brought',
      subjectKind: 'form',
      subject: id,
      parcel: null,
      afterHash: hashOf(taught),
      at,
    })
    return ok((await formById(tx, county, id))!)
  })
}

type Change = {
  readonly to: FormOnFile['state']
  readonly name?: string
  readonly kind: string
  readonly refusal: string
}

const change = (
  context: OperationContext,
  actor: Person,
  { form: id, version }: Looked,
  { to, name, kind, refusal }: Change,
): Promise<Answer<FormChanged>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account } = actor
    const form = await lockForm(tx, county, id)
    if (!form) return notFound()
    if (version !== undefined && version !== form.revision) return stale()
    if (form.state === to) return conflict(refusal)
    const at = context.clock()
    await changeForm(tx, county, id, { state: to, ...(name === undefined ? {} : { name }), by: account, at })
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind,
      subjectKind: 'form',
      subject: id,
      parcel: null,
      afterHash: hashOf(form.taught),
      body: { before: form.state, name: name ?? form.name },
      at,
    })
    const job = await context.jobs.enqueue(tx, actor, 'propose-again', { form: id })
    return ok({ form: (await formById(tx, county, id))!, job })
  })
