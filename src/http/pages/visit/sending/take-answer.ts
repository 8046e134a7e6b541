import type { ToldRecord } from '../form/from-record.ts'
import type { VisitForm } from '../form/typed.ts'
import { clashes } from './clashes.ts'
import type { Base, Done, KeptVisit, Request } from './kept-visit.ts'
import { look } from './next-request.ts'

/** What came back; null where nothing did. */
export type Came = { readonly status: number; readonly etag: string | null; readonly body: unknown } | null

/** How forms are told apart: `told` lays a record out as a form, `tidy` a form as it would come back from the service. */
export type Telling = {
  readonly told: (record: ToldRecord) => VisitForm
  readonly tidy: (form: VisitForm) => VisitForm
}

type Told = {
  readonly id: string
  readonly state: 'draft' | 'submitted'
  readonly revision: number
  readonly record: ToldRecord
  readonly changedAt: string
}

/**
 * A visit after its request was answered, or was not. Anything that leaves open whether it was done keeps the request
 * as it is, to be sent again; anything that says the service has another copy leads to a look at that copy.
 */
export function takeAnswer(visit: KeptVisit, came: Came, telling: Telling, now: string): KeptVisit {
  const { request } = visit
  if (!request || came === null || isPassing(came)) return visit
  if (came.status === 401)
    return { ...visit, trouble: { kind: 'sign-in', says: 'Sign in again, and it goes on by itself.' } }
  const answered: KeptVisit = { ...visit, request: null, trouble: null }
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
      if (came.status === 412 || kind === 'conflict') return lookAgain(visit)
      return refused(answered, came)
    case 'hand-in': {
      const { findings, consequence } = came.body as {
        findings: Told
        consequence: { status: Done['status'] }
      }
      if (came.status === 200)
        return { ...answered, done: { findings: findings.id, status: consequence.status, at: now } }
      if (came.status === 412 || kind === 'conflict') return { ...lookAgain(visit), handIn: false }
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

const withBase = (visit: KeptVisit, { form, change }: Request, { id, revision }: Told): KeptVisit => ({
  ...visit,
  base: { id, revision, form },
  saved: change,
})

const lookAgain = (visit: KeptVisit): KeptVisit =>
  visit.base ? { ...visit, request: look(visit, visit.base.id), trouble: null } : { ...visit, request: null }

/** The service's copy: it may be just what was sent, whose answer was lost; or somebody else's. */
function seen(visit: KeptVisit, request: Request, told: Told, telling: Telling, now: string): KeptVisit {
  const theirs = telling.told(told.record)
  const base: Base = { id: told.id, revision: told.revision, form: theirs }
  const says = (form: VisitForm): boolean => clashes(telling.tidy(form), theirs, null).length === 0
  const [isWhatWasSent, isWhatIsHere] = [says(request.form), says(visit.form)]
  if (told.state === 'submitted') {
    if (isWhatIsHere) return { ...visit, base, done: { findings: told.id, status: null, at: now } }
    return { ...visit, other: { base, handedIn: true, at: told.changedAt } }
  }
  if (isWhatIsHere) return { ...visit, base, saved: visit.change }
  if (isWhatWasSent) return { ...visit, base: { ...base, form: request.form }, saved: request.change }
  if (visit.change === visit.saved) return { ...visit, base, form: theirs }
  return { ...visit, other: { base, handedIn: false, at: told.changedAt } }
}

function refused(visit: KeptVisit, { status, body }: NonNullable<Came>): KeptVisit {
  if (status === 404) {
    return {
      ...visit,
      trouble: {
        kind: 'gone',
        says: 'The county’s service does not have this visit any more, or not for this account.',
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
  return { ...visit, trouble: { kind: 'refused', says } }
}
