import type { NamedForm, TaughtForm } from '../reading/family/taught-form.ts'
import { withoutDropped } from '../reading/family/witness.ts'
import { witnessedBy } from './confirmations.ts'
import type { Tx } from './database/database.ts'

export const FORM_STATES = ['proposed', 'in-force', 'withdrawn'] as const
export type FormState = (typeof FORM_STATES)[number]

/** A form that papers taught, or that was brought from elsewhere. */
export type FormOnFile = {
  readonly id: string
  readonly name: string
  readonly state: FormState
  readonly taught: TaughtForm
  /** The paper whose pages its places are drawn on; null where it was brought from elsewhere. */
  readonly shownOn: string | null
  readonly shownPages: readonly number[]
  readonly revision: number
  readonly madeAt: Date
  readonly changedAt: Date
  readonly changedBy: string | null
}

/** A confirmed permit that a form was learned from. */
export type Teacher = { readonly transcription: string; readonly permit: number; readonly document: string }

const COLUMNS = [
  'id',
  'name',
  'state',
  'taught',
  'shown_on as shownOn',
  'shown_pages as shownPages',
  'revision',
  'made_at as madeAt',
  'changed_at as changedAt',
  'changed_by as changedBy',
] as const

type Row = Omit<FormOnFile, 'taught'> & { readonly taught: unknown }
const asForm = (row: Row): FormOnFile => ({ ...row, taught: row.taught as TaughtForm })

const select = (tx: Tx, county: string) =>
  tx.selectFrom('taught_form').select(COLUMNS).where('county', '=', county)

export async function formById(tx: Tx, county: string, id: string): Promise<FormOnFile | undefined> {
  const row = await select(tx, county).where('id', '=', id).executeTakeFirst()
  return row && asForm(row)
}

export async function lockForm(tx: Tx, county: string, id: string): Promise<FormOnFile | undefined> {
  const row = await select(tx, county).where('id', '=', id).forUpdate().executeTakeFirst()
  return row && asForm(row)
}

/** In the order they were learned, from after `after`; of one state where one is asked for. */
export async function formsAfter(
  tx: Tx,
  county: string,
  state: FormState | undefined,
  after: string | undefined,
  most: number,
): Promise<readonly FormOnFile[]> {
  let query = select(tx, county)
  if (state) query = query.where('state', '=', state)
  if (after) query = query.where('id', '>', after)
  return (await query.orderBy('id').limit(most).execute()).map(asForm)
}

/** What papers of the county are read by: fields that confirmations contradict are left out. */
export async function formsInForce(tx: Tx, county: string): Promise<readonly NamedForm[]> {
  const rows = await select(tx, county).where('state', '=', 'in-force').orderBy('id').execute()
  const witnessed = await witnessedBy(tx, county)
  return rows.map(({ id, name, taught }) => ({
    name,
    form: withoutDropped(taught as TaughtForm, witnessed.get(id) ?? []),
  }))
}

type Made = Pick<FormOnFile, 'id' | 'name' | 'taught' | 'shownOn' | 'shownPages' | 'changedBy'> & {
  readonly at: Date
}

export async function insertForm(tx: Tx, county: string, made: Made): Promise<void> {
  await tx
    .insertInto('taught_form')
    .values({
      county,
      id: made.id,
      name: made.name,
      state: 'proposed',
      taught: JSON.stringify(made.taught),
      shown_on: made.shownOn,
      shown_pages: [...made.shownPages],
      made_at: made.at,
      changed_at: made.at,
      changed_by: made.changedBy,
    })
    .execute()
}

type Changed = Partial<Pick<FormOnFile, 'name' | 'state' | 'taught' | 'shownOn' | 'shownPages'>> & {
  readonly by: string | null
  readonly at: Date
}

/** Changes a form and counts its revision up. */
export async function changeForm(
  tx: Tx,
  county: string,
  id: string,
  { name, state, taught, shownOn, shownPages, by, at }: Changed,
): Promise<void> {
  await tx
    .updateTable('taught_form')
    .set((eb) => ({
      ...(name === undefined ? {} : { name }),
      ...(state === undefined ? {} : { state }),
      ...(taught === undefined ? {} : { taught: JSON.stringify(taught) }),
      ...(shownOn === undefined ? {} : { shown_on: shownOn }),
      ...(shownPages === undefined ? {} : { shown_pages: [...shownPages] }),
      changed_by: by,
      changed_at: at,
      revision: eb('revision', '+', 1),
    }))
    .where('county', '=', county)
    .where('id', '=', id)
    .execute()
}

/** Says which permits a form was learned from. */
export async function insertTeachers(
  tx: Tx,
  county: string,
  form: string,
  teachers: readonly Teacher[],
): Promise<void> {
  if (teachers.length === 0) return
  await tx
    .insertInto('taught_by')
    .values(teachers.map((teacher) => ({ county, form, ...teacher })))
    .execute()
}

/** Oldest first. */
export const teachersOf = (tx: Tx, county: string, form: string): Promise<readonly Teacher[]> =>
  tx
    .selectFrom('taught_by')
    .select(['transcription', 'permit', 'document'])
    .where('county', '=', county)
    .where('form', '=', form)
    .orderBy('transcription')
    .orderBy('permit')
    .execute()

/** Those of some transcriptions that have taught a form. */
export async function haveTaught(
  tx: Tx,
  county: string,
  transcriptions: readonly string[],
): Promise<readonly Teacher[]> {
  if (transcriptions.length === 0) return []
  return tx
    .selectFrom('taught_by')
    .select(['transcription', 'permit', 'document'])
    .where('county', '=', county)
    .where('transcription', 'in', [...transcriptions])
    .execute()
}
