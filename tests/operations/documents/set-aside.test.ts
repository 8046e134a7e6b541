import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { readDocumentTaken } from '../../../src/operations/documents/read-document.ts'
import { bringBack, setAside } from '../../../src/operations/documents/set-aside.ts'
import { waitingPaper } from '../../http/pages/documents/waiting.ts'
import { testApp } from '../../support/app.ts'

const service = await testApp()
const { services: context, people } = service
const { reviewer } = people
const stands = async (id: string) => must(await readDocumentTaken(context, reviewer, id)).document

describe('setting aside', () => {
  test('keeps the reason and the proposals, and coming back takes only the reason away', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const before = await stands(id)
    const aside = must(
      await setAside(context, reviewer, {
        document: id,
        version: before.revision,
        reason: ' A page\n is missing. ',
      }),
    )
    expect(aside).toEqual({
      ...before,
      state: 'set-aside',
      reason: 'A page is missing.',
      revision: before.revision + 1,
    })
    const again = { document: id, version: undefined, reason: 'Again.' }
    expect(await setAside(context, reviewer, again)).toMatchObject({ ok: false, error: { why: 'conflict' } })
    const back = must(await bringBack(context, reviewer, { document: id, version: aside.revision }))
    expect(back).toEqual({ ...before, revision: before.revision + 2 })
    const late = await bringBack(context, reviewer, { document: id, version: aside.revision })
    expect(late).toMatchObject({ ok: false, error: { why: 'stale' } })
  })

  test.each(['', '  \n', 'x'.repeat(501), 'a \u0000 b', 'half \ud800'])(
    'wants a reason in words, within a line: %#',
    async (reason) => {
      const { id } = await waitingPaper(service, reviewer, 'form-1986')
      const asked = { document: id, version: undefined, reason }
      expect(await setAside(context, reviewer, asked)).toMatchObject({ ok: false, error: { why: 'invalid' } })
    },
  )

  test('is not done by a reviewer of another county, who does not see the paper', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const asked = { document: id, version: undefined, reason: 'Not mine.' }
    expect(await setAside(context, people.stranger, asked)).toMatchObject({
      ok: false,
      error: { why: 'not-found' },
    })
  })
})
