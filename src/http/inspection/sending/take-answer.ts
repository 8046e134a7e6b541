import type { ToldRecord } from '../form/from-record.ts'
import type { InspectionForm } from '../form/typed.ts'
import { clashes } from './clashes.ts'
import type { Base, Done, KeptInspection, Request } from './kept-inspection.ts'
import { look } from './next-request.ts'

/** What came back; null where nothing did. */
export type Came = { readonly status: number; readonly etag: string | null; readonly body: unknown } | null

/** How forms are told apart: `told` lays a record out as a form, `tidy` a form as it would come back from the service. */
export type Telling = {
  readonly told: (record: ToldRecord) => InspectionForm
  readonly tidy: (form: InspectionForm) => InspectionForm
}

type Told = {
  readonly id: string
  readonly state: 'draft' | 'submitted'
  readonly revision: number
  readonly record: ToldRecord
  readonly changedAt: string
}

/**
 * An inspection after its request was answered, or was not. Anything that leaves open whether it was done keeps the request
 * as it is, to be sent again; anything that says the service has another copy leads to a look at that copy.
 */
export function takeAnswer(
  inspection: KeptInspection,
  came: Came,
  telling: Telling,
  now: string,
): KeptInspection {
  const { request } = inspection
  if (!request || came === null || isPassing(came)) return inspection
  if (came.status === 401)
    return { ...inspection, trouble: { kind: 'sign-in', says: 'Sign in again, and it will continue.' } }
  const answered: KeptInspection = { ...inspection, request: null, trouble: null }
  const kind = problemKind(came.body)
  switch (request.what) {
    case 'begin':
      if (came.status === 201) return withBase(answered, request, came.body as Told)
      return refused(answered, came)
    case 'amend':
      if (came.status === 201) return { ...withBase(answered, request, came.body as Told), handIn: false }
      return refused(answered, came)
    case 'change':
      if (came.status === 200) return withBase(answered, request, came.body as Told)
      if (came.status === 412 || kind === 'conflict') return lookAgain(inspection)
      return refused(answered, came)
    case 'hand-in': {
      const { findings, consequence } = came.body as {
        findings: Told
        consequence: { status: Done['status'] }
      }
      if (came.status === 200)
        return { ...answered, done: { findings: findings.id, status: consequence.status, at: now } }
      if (came.status === 412 || kind === 'conflict') return { ...lookAgain(inspection), handIn: false }
      return { ...refused(answered, came), handIn: false }
    }
    case 'look':
      return came.status === 200
        ? seen(answered, request, came.body as Told, telling, now)
        : refused(answered, came)
  }
}

/** Nothing is known yet: gone, overloaded, too many, or the first try of it still under way. */
const isPassing = ({ status, body }: NonNullable<Came>): boolean =>
  status >= 500 || status === 429 || status === 408 || problemKind(body) === 'still-working'

const problemKind = (body: unknown): string | null => {
  const type = typeof body === 'object' && body !== null && 'type' in body ? String(body.type) : ''
  return type.startsWith('/problems/') ? type.slice('/problems/'.length) : null
}

const withBase = (
  inspection: KeptInspection,
  { form, change }: Request,
  { id, revision }: Told,
): KeptInspection => ({
  ...inspection,
  base: { id, revision, form },
  saved: change,
})

const lookAgain = (inspection: KeptInspection): KeptInspection =>
  inspection.base
    ? { ...inspection, request: look(inspection, inspection.base.id), trouble: null }
    : { ...inspection, request: null }

/** The service's copy: it may be just what was sent, whose answer was lost; or somebody else's. */
function seen(
  inspection: KeptInspection,
  request: Request,
  told: Told,
  telling: Telling,
  now: string,
): KeptInspection {
  const theirs = telling.told(told.record)
  const base: Base = { id: told.id, revision: told.revision, form: theirs }
  const says = (form: InspectionForm): boolean => clashes(telling.tidy(form), theirs, null).length === 0
  const [isWhatWasSent, isWhatIsHere] = [says(request.form), says(inspection.form)]
  if (told.state === 'submitted') {
    if (isWhatIsHere) return { ...inspection, base, done: { findings: told.id, status: null, at: now } }
    return { ...inspection, other: { base, handedIn: true, at: told.changedAt } }
  }
  if (isWhatIsHere) return { ...inspection, base, saved: inspection.change }
  if (isWhatWasSent) return { ...inspection, base: { ...base, form: request.form }, saved: request.change }
  if (inspection.change === inspection.saved) return { ...inspection, base, form: theirs }
  return { ...inspection, other: { base, handedIn: false, at: told.changedAt } }
}

function refused(inspection: KeptInspection, { status, body }: NonNullable<Came>): KeptInspection {
  if (status === 404) {
    return {
      ...inspection,
      trouble: {
        kind: 'gone',
        says: 'The county’s service does not have this inspection any more, or not for this account.',
      },
    }
  }
  const { detail, title, errors } = (body ?? {}) as {
    readonly detail?: string
    readonly title?: string
    readonly errors?: readonly { readonly message: string }[]
  }
  const says =
    errors?.map(({ message }) => message).join('; ') || detail || title || `It was refused (${status}).`
  return { ...inspection, trouble: { kind: 'refused', says } }
}
