import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { taughtExample } from '../../../src/http/api/forms/shapes.ts'
import { bringForm } from '../../../src/operations/forms/change-form.ts'
import { readForm } from '../../../src/operations/forms/read-forms.ts'
import { testApp } from '../../support/app.ts'

const { app, services, people } = await testApp()
const { reviewer } = people
const pages = '/counties/quillback/forms'
const get = (url: string) => app.inject({ url, headers: { authorization: `Bearer ${reviewer.token}` } })
const post = (url: string, fields: Record<string, string>) =>
  app.inject({
    method: 'POST',
    url,
    headers: {
      authorization: `Bearer ${reviewer.token}`,
      'content-type': 'application/x-www-form-urlencoded',
    },
    payload: new URLSearchParams(fields).toString(),
  })
const brought = async (name: string) =>
  must(await bringForm(services, reviewer, { name, taught: taughtExample })).id
const stateOf = async (id: string) => must(await readForm(services, reviewer, id)).form

describe('the pages of taught forms', () => {
  test('list what is proposed, and lead to each; the papers lead there', async () => {
    const id = await brought('Card <of> 1958')
    const { body } = await get(pages)
    expect(body).toContain('Card &lt;of&gt; 1958')
    expect(body).toContain(`href="${pages}/${id}"`)
    expect((await get('/counties/quillback/documents')).body).toContain(`href="${pages}"`)
    expect((await get(`${pages}?state=in-force`)).body).toContain('No layout is in use')
  })

  test('show each field with its place, and the printed words where there is no picture', async () => {
    const { body } = await get(`${pages}/${await brought('A form')}`)
    expect(body).toContain('Tank, capacity')
    expect(body).toMatch(/<rect class="spot" x="120.0" y="258.8"/)
    expect(body).toContain('>Capacity</text>')
    expect(body).toContain('/export"')
  })

  test('take a form up under a name, and withdraw it', async () => {
    const id = await brought('A form')
    const up = await post(`${pages}/${id}/activation`, { version: '1', name: 'Card, 1958' })
    expect([up.statusCode, up.headers.location]).toEqual([303, `${pages}/${id}`])
    expect(await stateOf(id)).toMatchObject({ state: 'in-force', name: 'Card, 1958' })
    expect((await get(`${pages}/${id}`)).body).not.toContain('activation')
    await post(`${pages}/${id}/withdrawal`, { version: '2' })
    expect((await stateOf(id)).state).toBe('withdrawn')
  })

  test('say what is wrong with a name, and whether somebody was faster', async () => {
    const id = await brought('A form')
    const nameless = await post(`${pages}/${id}/activation`, { version: '1', name: ' ' })
    expect([nameless.statusCode, nameless.body]).toEqual([422, expect.stringContaining('Enter a name')])
    const late = await post(`${pages}/${id}/withdrawal`, { version: '7' })
    expect([late.statusCode, late.body]).toEqual([
      409,
      expect.stringContaining('Someone else changed this layout'),
    ])
    expect((await stateOf(id)).state).toBe('proposed')
  })
})
