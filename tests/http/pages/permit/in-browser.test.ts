import type { AddressInfo } from 'node:net'
import { expect, test, vi } from 'vitest'
import { testApp } from '../../../support/app.ts'
import { DESK, inBrowser, openPage, PHONE } from '../../../support/browser.ts'
import { looksRight, unfold } from '../../../support/looks-right.ts'
import { newParcel, permit1974 } from '../../../support/quillback.ts'

vi.setConfig({ testTimeout: 120_000 })

const { app, services, people, ask } = await testApp()
await app.listen({ host: '127.0.0.1', port: 0 })
const origin = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`
const from = (await newParcel(services)).number
const to = (await newParcel(services)).number
const entered = await ask('reviewer', {
  method: 'POST',
  url: `/v1/counties/quillback/parcels/${from}/permits`,
  body: permit1974,
})
const here = `${origin}/counties/quillback`
const page = `${here}/permits/${entered.body.permit.id}`
const as = (who: 'reviewer' | 'firm', viewport = DESK) =>
  openPage({ viewport, extraHTTPHeaders: { authorization: `Bearer ${people[who].token}` } })

inBrowser('the page of a permit', () => {
  test('moves it to its parcel, keeps what was typed where that cannot be, and tells where it came from', async () => {
    const { page: tab, context, faults } = await as('reviewer')
    await tab.goto(`${here}/parcels/${from}`)
    await tab.getByRole('link', { name: /74-118/ }).click()
    await tab.waitForURL(page)
    await tab.getByText('Move to another parcel').first().click()
    await tab.locator('#toParcel-move').fill('99-9999-9999')
    await tab.locator('#reason-move').selectOption('parcel-misread')
    await tab.locator('#note-move').fill('Two digits were transposed.')
    await tab.getByRole('button', { name: 'Move to another parcel' }).click()
    expect(await tab.getByRole('alert').textContent()).toContain('there is no parcel 99-9999-9999')
    expect(await tab.locator('#note-move').inputValue()).toBe('Two digits were transposed.')
    await looksRight(tab, 'a permit whose form came back')
    await tab.locator('#toParcel-move').fill(to)
    await tab.getByRole('button', { name: 'Move to another parcel' }).click()
    await tab.getByRole('heading', { name: 'How it was filed' }).waitFor()
    expect(await tab.locator('main').textContent()).toMatch(
      new RegExp(`moved to another parcel from ${from} to ${to}`),
    )
    await tab.goto(`${here}/parcels/${from}`)
    expect(await tab.locator('#papers').textContent()).toContain(`moved to ${to}`)
    expect(faults).toEqual([])
    await context.close()
  })

  test('of a number that is in another file too says so, and can be merged into that one', async () => {
    const third = (await newParcel(services)).number
    const url = `/v1/counties/quillback/parcels/${third}/permits`
    const twin = await ask('reviewer', { method: 'POST', url, body: { ...permit1974, number: '#74 118' } })
    const { page: tab, context } = await as('reviewer')
    await tab.goto(page)
    const list = tab.locator('section', { hasText: 'Same number in other files' })
    expect(await list.textContent()).toContain(third)
    await looksRight(tab, 'a permit whose number is in another file')
    await list.getByRole('link', { name: /74 118/ }).click()
    await tab.getByText('Merge into another permit').first().click()
    await tab.locator('#into-merge').fill(entered.body.permit.id)
    await tab.locator('#reason-merge').selectOption('scanned-twice')
    await tab.getByRole('button', { name: 'Merge into another permit' }).click()
    await tab.getByText('It counts for nothing in the record.').waitFor()
    await tab.getByRole('status').getByRole('link').click()
    await tab.waitForURL(page)
    expect(await tab.locator('main').textContent()).toContain('Merged into this permit')
    expect(twin.body.suspectedDuplicates).toMatchObject([{ id: entered.body.permit.id }])
    await context.close()
  })

  test.each([
    ['a phone', PHONE],
    ['a desk', DESK],
  ])('looks right on %s, unfolded', async (what, viewport) => {
    const { page: tab, context, faults } = await as('reviewer', viewport)
    await tab.goto(page)
    await unfold(tab)
    await looksRight(tab, `a permit on ${what}`)
    expect(faults).toEqual([])
    await context.close()
  })

  test('a firm reads it, without the forms and the words', async () => {
    const { page: tab, context } = await as('firm')
    await tab.goto(page)
    const says = await tab.locator('main').textContent()
    expect(says).toContain('How it was filed')
    expect(says).toContain('the parcel number was misread')
    expect(says).not.toMatch(/transposed|Change how it is filed/)
    await context.close()
  })
})
