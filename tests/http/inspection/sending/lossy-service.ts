import { presentFindingsRecord } from '../../../../src/http/api/shapes/findings-record.ts'
import type { Request } from '../../../../src/http/inspection/sending/kept-inspection.ts'
import type { Came } from '../../../../src/http/inspection/sending/take-answer.ts'
import { findingsEntry } from '../../../../src/reading/entry/findings.ts'
import type { FindingsRecord } from '../../../../src/records/findings.ts'

type Kept = {
  readonly id: string
  record: FindingsRecord
  revision: number
  state: 'draft' | 'submitted'
  amends: string | null
}

/** What happens to a request on its way: it arrives and is answered; it arrives and the answer is lost; it never arrives. */
export type Fate = 'answered' | 'answer-lost' | 'lost'

/** The service's rules for findings, keys and versions, in memory: as tests/http/api holds the real one to them. */
export function lossyService() {
  const drafts = new Map<string, Kept>()
  const answers = new Map<string, { readonly print: string; readonly came: NonNullable<Came> }>()
  let submissions = 0

  const told = ({ id, record, revision, state }: Kept) => ({
    id,
    state,
    revision,
    record: JSON.parse(JSON.stringify(presentFindingsRecord(record))),
    changedAt: '2026-10-12T15:00:00Z',
  })
  const problem = (status: number, kind: string): NonNullable<Came> => ({
    status,
    etag: null,
    body: { type: `/problems/${kind}`, title: kind, detail: kind },
  })

  function work({ what, path, match, body }: Request): NonNullable<Came> {
    const id = /findings\/([^/]+)/.exec(path)?.[1] ?? ''
    const there = drafts.get(id)
    const parsed = body === null ? null : findingsEntry.safeParse(JSON.parse(body))
    if (parsed && !parsed.success) return problem(422, 'invalid-input')
    if (what === 'begin' || what === 'amend') {
      const made: Kept = {
        id: `f${drafts.size + 1}`,
        record: parsed!.data!,
        revision: 1,
        state: 'draft',
        amends: what === 'amend' ? id : null,
      }
      drafts.set(made.id, made)
      return { status: 201, etag: '"r1"', body: told(made) }
    }
    if (!there) return problem(404, 'not-found')
    if (what === 'look') return { status: 200, etag: null, body: told(there) }
    if (there.state === 'submitted') return problem(409, 'conflict')
    if (match !== `"r${there.revision}"`) return problem(412, 'stale')
    there.revision += 1
    if (what === 'change') {
      there.record = parsed!.data!
      return { status: 200, etag: null, body: told(there) }
    }
    there.state = 'submitted'
    submissions += 1
    return { status: 200, etag: null, body: { findings: told(there), consequence: { status: null } } }
  }

  return {
    drafts,
    submissions: () => submissions,
    send: (request: Request, fate: Fate): Came => {
      if (fate === 'lost') return null
      const print = JSON.stringify([request.method, request.path, request.body])
      const before = request.key ? answers.get(request.key) : undefined
      if (before && before.print !== print) return problem(422, 'key-reused')
      const came = before?.came ?? work(request)
      if (request.key && came.status < 300) answers.set(request.key, { print, came })
      return fate === 'answered' ? came : null
    },
  }
}
