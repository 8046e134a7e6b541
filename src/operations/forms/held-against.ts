import type { TaughtForm } from '../../reading/family/taught-form.ts'
import { isDropped, type Witnessed, witnessedOf, witnessesOf } from '../../reading/family/witness.ts'
import type { ReadingContext } from '../../reading/values/answers.ts'
import { keepWitnesses, witnessedBy } from '../../store/confirmations.ts'
import type { Service } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { recordEvent } from '../../store/events.ts'
import type { FormOnFile } from '../../store/taught-forms.ts'
import type { OperationContext } from '../context.ts'
import type { Taught } from './lesson-of.ts'

type Context = Pick<OperationContext, 'clock' | 'newId' | 'jobs'> & { readonly actor: Service }

/**
 * Holds a form in force against permits that were confirmed on a paper of it. A field that confirmations contradict is read
 * no more: that is an event, and papers that wait are proposed anew without it. Answers the names of such fields.
 */
export async function heldAgainst(
  form: FormOnFile,
  leaf: readonly Taught[],
  { actor, clock, newId, jobs }: Context,
  tx: Tx,
  reading: ReadingContext,
): Promise<readonly string[]> {
  const { county } = actor
  const before = (await witnessedBy(tx, county, form.id)).get(form.id) ?? []
  const said = witnessesOf(
    leaf.map(({ lesson }) => lesson),
    form.taught,
    reading,
  )
  for (const [at, { teacher }] of leaf.entries())
    await keepWitnesses(
      tx,
      county,
      { transcription: teacher.transcription, permit: teacher.permit, form: form.id },
      said[at] ?? [],
    )
  const after = (await witnessedBy(tx, county, form.id)).get(form.id) ?? []
  const known = new Set(droppedOf(form.taught, before).map(nameOf))
  const dropped = droppedOf(form.taught, after).filter((field) => !known.has(nameOf(field)))
  for (const field of dropped)
    await recordEvent(tx, actor, {
      id: newId(),
      kind: 'form-field-dropped',
      subjectKind: 'form',
      subject: form.id,
      parcel: null,
      body: { ...field },
      at: clock(),
    })
  if (dropped.length > 0) await jobs.enqueue(tx, actor, 'propose-again', { form: form.id })
  return dropped.map(nameOf)
}

const droppedOf = ({ sheets }: TaughtForm, all: readonly Witnessed[]): Witnessed[] =>
  sheets
    .flatMap(({ fields, rows }) => [...fields, ...(rows?.fields ?? [])])
    .flatMap((field) => {
      const witnessed = witnessedOf(field, all)
      return isDropped(field, witnessed) ? [witnessed] : []
    })

const nameOf = ({ ask, kind }: Witnessed): string => (kind === null ? ask : `${kind} ${ask}`)
