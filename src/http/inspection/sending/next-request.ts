import { entryOf } from '../form/entry.ts'
import type { KeptInspection, Request } from './kept-inspection.ts'

/**
 * What is to be sent next; null where nothing is, or nothing may be. `readable` says whether the form as it stands can
 * be read: the service takes no other.
 */
export function nextRequest(inspection: KeptInspection, readable: boolean): Request | null {
  const { request, other, done, trouble, base, change, saved, handIn } = inspection
  if (request) return request
  if (other || done || trouble?.kind === 'refused' || trouble?.kind === 'gone') return null
  if (!base) return change > 0 && readable ? begin(inspection) : null
  if (change > saved) return readable ? put(inspection, base.id, base.revision) : null
  return handIn && readable ? submit(inspection, base.id, base.revision) : null
}

const at = ({ county }: KeptInspection): string => `/v1/counties/${encodeURIComponent(county)}`
const bodyOf = ({ form }: KeptInspection): string => JSON.stringify(entryOf(form))

function begin(inspection: KeptInspection): Request {
  const { form, change, keys, parcel } = inspection
  const path = `${at(inspection)}/parcels/${parcel.id}/findings`
  return {
    what: 'begin',
    method: 'POST',
    path,
    key: keys.begin,
    match: null,
    body: bodyOf(inspection),
    form,
    change,
  }
}

function put(inspection: KeptInspection, id: string, revision: number): Request {
  const { form, change } = inspection
  const path = `${at(inspection)}/findings/${id}`
  return {
    what: 'change',
    method: 'PUT',
    path,
    key: null,
    match: `"r${revision}"`,
    body: bodyOf(inspection),
    form,
    change,
  }
}

function submit(inspection: KeptInspection, id: string, revision: number): Request {
  const { form, change, keys } = inspection
  const path = `${at(inspection)}/findings/${id}/submission`
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
export function look(inspection: KeptInspection, id: string): Request {
  const { form, change } = inspection.request ?? inspection
  return {
    what: 'look',
    method: 'GET',
    path: `${at(inspection)}/findings/${id}`,
    key: null,
    match: null,
    body: null,
    form,
    change,
  }
}

/** An amendment with what was chosen out of two copies. */
export function amendment(inspection: KeptInspection, id: string): Request {
  const { form, change, keys } = inspection
  const path = `${at(inspection)}/findings/${id}/amendment`
  return {
    what: 'amend',
    method: 'POST',
    path,
    key: keys.amend,
    match: null,
    body: bodyOf(inspection),
    form,
    change,
  }
}
