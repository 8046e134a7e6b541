import { expect, test } from 'vitest'
import { newCode } from '../../../../src/letters/code.ts'
import { testApp } from '../../../support/app.ts'
import { newParcel, permit1974 } from '../../../support/quillback.ts'

const { app, services, ask } = await testApp()
const parcel = await newParcel(services)
const at = `/v1/counties/quillback/parcels/${parcel.number}`
const issued = (await ask('agent', { method: 'POST', url: `${at}/letters`, body: { kind: 'status' } })).body
const page = async (url: string) => {
  const { statusCode, body, headers } = await app.inject({ url, headers: { accept: 'text/html' } })
  return { status: statusCode, html: body, headers }
}

test('the address on the letter tells anyone that it is genuine, and of what, without script or sign-in', async () => {
  const { status, html, headers } = await page(new URL(issued.checkAddress).pathname)
  expect(status).toBe(200)
  expect(headers['content-type']).toBe('text/html; charset=utf-8')
  for (const words of [
    'Genuine and up to date',
    `Letter ${issued.number}`,
    parcel.number,
    'Quillback County',
    issued.pdfSha256,
    issued.signature,
    '/.well-known/jwks.json',
  ]) {
    expect(html).toContain(words)
  }
  expect(html).not.toContain('<script')
})

test('a code typed in a form finds the same page', async () => {
  const asked = await page('/letters')
  expect([asked.status, asked.html.includes('<form')]).toEqual([200, true])
  const found = await page(
    `/letters?code=${encodeURIComponent(issued.code.toLowerCase().replaceAll('-', ' '))}`,
  )
  expect([found.status, found.headers.location]).toEqual([303, `/letters/${issued.code}`])
})

test('a slip of the fingers comes back with what was typed, beside the field', async () => {
  const { status, html } = await page('/letters?code=%3Cb%3EH7KO')
  expect(status).toBe(422)
  expect(html).toContain('value="&lt;b&gt;H7KO"')
  expect(html).toContain('aria-invalid="true" aria-describedby="fault"')
  expect(html).toMatch(/No code has the character .+\. Please check the letter/)
})

test('a code that no letter has is said to be none', async () => {
  const { status, html } = await page(`/letters/${newCode()}`)
  expect(status).toBe(404)
  expect(html).toContain('No letter has this code.')
})

test('superseded and withdrawn are told in words', async () => {
  await ask('reviewer', { method: 'POST', url: `${at}/permits`, body: permit1974 })
  const url = new URL(issued.checkAddress).pathname
  const superseded = (await page(url)).html
  expect(superseded).toContain('Genuine, but out of date')
  expect(superseded).toContain('A permit was entered or corrected.')
  const reason = 'Wrong parcel <7> & sent in error.'
  await ask('reviewer', {
    method: 'POST',
    url: `/v1/counties/quillback/letters/${issued.id}/withdrawal`,
    body: { reason },
  })
  const withdrawn = (await page(url)).html
  expect(withdrawn).toContain('Do not rely on it.')
  expect(withdrawn).toContain('Wrong parcel &lt;7&gt; &amp; sent in error.')
})
