import { ok } from '../../base/result.ts'
import type { Witnessed } from '../../reading/family/witness.ts'
import { witnessedBy } from '../../store/confirmations.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import {
  type FormOnFile,
  type FormState,
  formById,
  formsAfter,
  type Teacher,
  teachersOf,
} from '../../store/taught-forms.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type FormRead = {
  readonly form: FormOnFile
  readonly teachers: readonly Teacher[]
  /** How its fields stood against permits that were confirmed while it was in force. */
  readonly witnessed: readonly Witnessed[]
}

type Context = Pick<OperationContext, 'database'>

/** A taught form with all that it knows, and the confirmed permits that taught it. */
export const readForm = (context: Context, actor: Person, id: string): Promise<Answer<FormRead>> =>
  transact(context.database, actor, async (tx) => {
    const form = await formById(tx, actor.county, id)
    if (!form) return notFound()
    const witnessed = (await witnessedBy(tx, actor.county, id)).get(id) ?? []
    return ok({ form, teachers: await teachersOf(tx, actor.county, id), witnessed })
  })

/** Those of one state, or all, in the order they were learned. */
export const listForms = (
  context: Context,
  actor: Person,
  state: FormState | undefined,
  after: string | undefined,
  most: number,
): Promise<readonly FormOnFile[]> =>
  transact(context.database, actor, (tx) => formsAfter(tx, actor.county, state, after, most))
