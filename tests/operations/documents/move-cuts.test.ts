import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { confirmTranscription } from '../../../src/operations/documents/confirm-transcription.ts'
import { moveCuts } from '../../../src/operations/documents/move-cuts.ts'
import { bringBack, setAside } from '../../../src/operations/documents/set-aside.ts'
import { waitingPaper } from '../../http/pages/documents/waiting.ts'
import { testApp } from '../../support/app.ts'
import { newParcel, permit1974, permitRecord } from '../../support/quillback.ts'
import { wholeDocument } from '../../support/whole-document.ts'

const service = await testApp()
const { services: context, people } = service
const { reviewer } = people
const stands = async (id: string) => {
  const { document, proposals } = await wholeDocument(context, reviewer, id)
  return { ...document, proposals }
}
const cut = (document: string, begins: readonly number[], version?: number) =>
  moveCuts(context, reviewer, { document, version, begins })

describe('moving the cuts', () => {
  test('together and apart again reads what was read at first', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986', 'form-2015', 'form-1978')
    const first = await stands(id)
    expect(first.proposals.map((it) => it.pages)).toEqual([[1], [2], [3]])
    const joined = must(await cut(id, [1, 3]))
    expect(joined.permits).toEqual([[1, 2], [3]])
    expect((await stands(id)).proposals[1]).toEqual(first.proposals[2])
    expect(joined.revision).toBe(first.revision + 1)
    const apart = must(await cut(id, [3, 2]))
    expect(apart.permits).toEqual(first.permits)
    const { proposals } = await stands(id)
    expect(proposals).toEqual(first.proposals)
    expect(proposals.map((it) => it.entry.number)).toEqual(papers.map(({ truth }) => truth.entry.number))
  })

  test.each([
    [[0], 'there is no page 0'],
    [[2, 7], 'there is no page 7: the document has 2'],
    [[1.5], 'there is no page 1.5'],
  ])('to %j is refused, and nothing is changed', async (begins, says) => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986', 'form-2015')
    const before = await stands(id)
    expect(await cut(id, begins)).toMatchObject({
      ok: false,
      error: { why: 'invalid', issues: [{ message: expect.stringContaining(says) }] },
    })
    expect(await stands(id)).toEqual(before)
  })

  test('of a version that is gone, of a paper set aside, and of one with a confirmed permit is refused', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986', 'form-2015')
    const { revision } = await stands(id)
    expect(await cut(id, [1], revision - 1)).toMatchObject({ ok: false, error: { why: 'stale' } })
    must(await setAside(context, reviewer, { document: id, version: revision, reason: 'For later.' }))
    expect(await cut(id, [1])).toMatchObject({ ok: false, error: { why: 'conflict' } })
    must(await bringBack(context, reviewer, { document: id, version: undefined }))
    const parcel = await newParcel(context)
    const permits = [{ parcel: parcel.number, proposal: 0, record: permitRecord(permit1974), places: {} }]
    must(
      await confirmTranscription(context, reviewer, {
        document: id,
        version: undefined,
        permits,
        more: true,
        body: { permits: [{ proposal: 0 }] },
      }),
    )
    expect((await stands(id)).state).toBe('proposed')
    expect(await cut(id, [1])).toMatchObject({ ok: false, error: { why: 'conflict' } })
  })

  test('is not done by a reviewer of another county, who does not see the paper', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const asked = { document: id, version: undefined, begins: [1] }
    expect(await moveCuts(context, people.stranger, asked)).toMatchObject({
      ok: false,
      error: { why: 'not-found' },
    })
  })
})
