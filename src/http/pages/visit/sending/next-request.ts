import { entryOf } from '../form/entry.ts'
import type { KeptVisit, Request } from './kept-visit.ts'

/**
 * What is to be sent next; null where nothing is, or nothing may be. `readable` says whether the form as it stands can
 * be read: the service takes no other.
 */
export function nextRequest(visit: KeptVisit, readable: boolean): Request | null {
  const { request, other, done, trouble, base, change, saved, handIn } = visit
  if (request) return request
  if (other || done || trouble?.kind === 'refused' || trouble?.kind === 'gone') return null
  if (!base) return change > 0 && readable ? begin(visit) : null
  if (change > saved) return readable ? put(visit, base.id, base.revision) : null
  return handIn && readable ? submit(visit, base.id, base.revision) : null
}

const at = ({ county }: KeptVisit): string => `/v1/counties/${encodeURIComponent(county)}`
const bodyOf = ({ form }: KeptVisit): string => JSON.stringify(entryOf(form).entry)

function begin(visit: KeptVisit): Request {
  const { form, change, keys, parcel } = visit
  const path = `${at(visit)}/parcels/${parcel.id}/findings`
  return {
    what: 'begin',
    method: 'POST',
    path,
    key: keys.begin,
    match: null,
    body: bodyOf(visit),
    form,
    change,
  }
}

function put(visit: KeptVisit, id: string, revision: number): Request {
  const { form, change } = visit
  const path = `${at(visit)}/findings/${id}`
  return {
    what: 'change',
    method: 'PUT',
    path,
    key: null,
    match: `"r${revision}"`,
    body: bodyOf(visit),
    form,
    change,
  }
}

function submit(visit: KeptVisit, id: string, revision: number): Request {
  const { form, change, keys } = visit
  const path = `${at(visit)}/findings/${id}/submission`
  return {
    what: 'hand-in',
    method: 'POST',
    path,
    key: keys.handIn,
    match: `"r${revision}"`,
    body: null,
    form,
    change,
  }
}

/** How it stands on the service, asked where an answer or the lack of one leaves that open. */
export function look(visit: KeptVisit, id: string): Request {
  const { form, change } = visit.request ?? visit
  return {
    what: 'look',
    method: 'GET',
    path: `${at(visit)}/findings/${id}`,
    key: null,
    match: null,
    body: null,
    form,
    change,
  }
}

/** An amendment with what was chosen out of two copies. */
export function amendment(visit: KeptVisit, id: string): Request {
  const { form, change, keys } = visit
  const path = `${at(visit)}/findings/${id}/amendment`
  return {
    what: 'amend',
    method: 'POST',
    path,
    key: keys.amend,
    match: null,
    body: bodyOf(visit),
    form,
    change,
  }
}
