import type { AddressInfo } from 'node:net'
import type { BrowserContextOptions, Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
import { must } from '../../../../src/base/result.ts'
import { setAside } from '../../../../src/operations/documents/set-aside.ts'
import { testApp } from '../../../support/app.ts'
import { accessFaults, DESK, inBrowser, openPage, overflow, PHONE } from '../../../support/browser.ts'
import { looksRight } from '../../../support/looks-right.ts'
import { walkOf } from '../../../support/walk.ts'
import { wholeDocument } from '../../../support/whole-document.ts'
import { permitsOfParcel } from './filed.ts'
import { waitingPaper } from './waiting.ts'

// Other work may share the machine, and axe looks at every element of long pages.
vi.setConfig({ testTimeout: 120_000 })

const service = await testApp({ settings: { ANSWERS: 'fast' } })
const { app, services, people } = service
const { reviewer } = people
await app.listen({ host: '127.0.0.1', port: 0 })
const here = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}/counties/quillback/documents`

const open = (options: BrowserContextOptions = {}) =>
  openPage({
    viewport: DESK,
    ...options,
    extraHTTPHeaders: { authorization: `Bearer ${reviewer.token}` },
  })
const filed = (number: string) => permitsOfParcel(services, reviewer, number)
const read = async (id: string) => wholeDocument(services, reviewer, id)
const focused = (page: Page) =>
  page.evaluate<string>(
    '(({ name, type, textContent }) => (type === "submit" ? textContent : name))(document.activeElement)',
  )
const field = (page: Page, pointer: string) => page.locator(`[name="${pointer}"]`)

inBrowser('with the keyboard alone', () => {
  test('three papers one after the other, each with one key: Enter for what is to be looked at, Enter to confirm', async () => {
    const papers = [
      await waitingPaper(service, reviewer, 'form-1986'),
      await waitingPaper(service, reviewer, 'form-2015'),
      await waitingPaper(service, reviewer, 'form-1978'),
    ]
    const { page, context, faults } = await open()
    await page.goto(`${here}/${papers[0]!.id}`)
    const presses: number[] = []
    for (const [index, { id }] of papers.entries()) {
      await page.waitForURL(new RegExp(`documents/${id}`))
      await page.locator('.confirm.live :focus').waitFor()
      const again = await page.locator('[data-check]').count()
      let pressed = 0
      while (!/^Confirm/.test(await focused(page))) {
        expect(pressed, `paper ${index}: as many presses as values to look at`).toBeLessThan(again + 1)
        await page.keyboard.press('Enter')
        pressed += 1
      }
      await page.keyboard.press('Enter')
      presses.push(pressed + 1)
      expect(pressed).toBe(again)
    }
    await page.waitForURL(/documents\?done=/)
    expect(await page.locator('[role=status]').textContent()).toContain('is confirmed')
    // Twenty in ten minutes is one in thirty seconds: the keys must leave nearly all of it for looking.
    expect(Math.max(...presses)).toBeLessThanOrEqual(15)
    for (const { papers: made } of papers) {
      const { truth } = made[0]!
      expect((await filed(truth.parcelNumber)).map(({ record }) => record.number)).toEqual([
        truth.entry.number,
      ])
    }
    expect(faults).toEqual([])
    await context.close()
  })

  test('the value in focus is boxed where it was read and enlarged; Ctrl+Enter confirms from anywhere', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const { proposals } = await read(id)
    const { page, context, faults } = await open()
    await page.goto(`${here}/${id}`)
    await page.locator('.confirm.live').waitFor()
    await field(page, '/number').focus()
    for (const pointer of ['/number', '/kind', '/issuedOn']) {
      expect(await focused(page)).toBe(pointer)
      const { box } = proposals[0]!.fields.find((it) => it.pointer === pointer)!
      const at = page.locator('.sheet.now .at')
      expect(Number(await at.getAttribute('x'))).toBeCloseTo(box.x * 1000 - 4, 1)
      expect(Number(await at.getAttribute('width'))).toBeCloseTo(box.w * 1000 + 8, 1)
      const [left, top, width, height] = (await page.locator('.zoom svg').getAttribute('viewBox'))!
        .split(' ')
        .map(Number)
      const shape = Number(await page.locator('.zoom image').getAttribute('height'))
      expect(left).toBeLessThanOrEqual(box.x * 1000)
      expect(left! + width!).toBeGreaterThanOrEqual((box.x + box.w) * 1000)
      expect(top).toBeLessThanOrEqual(box.y * shape)
      expect(top! + height!).toBeGreaterThanOrEqual((box.y + box.h) * shape)
      await page.keyboard.press('Tab')
    }
    await field(page, '/bedrooms').focus()
    // Not everything is held against the paper yet: it comes back, and the focus is on the first that is not.
    await page.keyboard.press('Control+Enter')
    await page.locator('[role=alert]').waitFor()
    const [first] = await page.locator('[aria-invalid]').all()
    expect(await focused(page)).toBe(await first!.getAttribute('name'))
    const left = await page.locator('[data-check]').count()
    for (let press = 0; press < left; press++) await page.keyboard.press('Enter')
    await field(page, '/bedrooms').focus()
    await page.keyboard.press('Control+Enter')
    await page.waitForURL(/done=/)
    expect((await read(id)).document.state).toBe('confirmed')
    expect(faults).toEqual([])
    await context.close()
  })
})

inBrowser('without JavaScript', () => {
  test('a value is shown with its cut of the scan, mended where it is at fault, and confirmed', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986')
    const { page, context } = await open({ javaScriptEnabled: false })
    await page.goto(`${here}/${id}`)
    const cut = page.locator('.field', { has: field(page, '/components/0/capacity') }).locator('.cut')
    expect(await cut.isVisible()).toBe(false)
    await field(page, '/components/0/capacity').focus()
    expect(await cut.isVisible()).toBe(true)
    expect(await page.locator('.with-keys').isVisible()).toBe(false)
    await field(page, '/components/0/capacity').fill('a thousand')
    await page.click('button[value=confirm]')
    expect(await field(page, '/components/0/capacity').inputValue()).toBe('a thousand')
    expect(
      await page
        .locator('.field', { has: field(page, '/components/0/capacity') })
        .locator('.fault')
        .textContent(),
    ).toMatch(/a thousand|gal/)
    for (const box of await page.locator('.field .seen input').all()) await box.check()
    await field(page, '/components/0/capacity').fill('1,000 gal')
    // Enter in a field sends the form by its first button, which is the one that confirms.
    await page.keyboard.press('Enter')
    await page.waitForURL(/done=/)
    const [permit] = await filed(papers[0]!.truth.parcelNumber)
    expect(permit!.record.components[0]!.capacity).toMatchObject({ gal: 1000 })
    await context.close()
  })
})

inBrowser('two people on one paper', () => {
  test('the slower sees both side by side, keeps theirs, and the permit stays as the faster confirmed it', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986')
    const [mine, theirs] = [await open({ viewport: PHONE }), await open()]
    for (const { page } of [mine, theirs]) {
      await page.goto(`${here}/${id}`)
      for (const box of await page.locator('.field .seen input').all()) await box.check()
    }
    await field(theirs.page, '/bedrooms').fill('5')
    await theirs.page.click('button[value=confirm]')
    await theirs.page.waitForURL(/done=/)
    await field(mine.page, '/bedrooms').fill('6')
    await mine.page.click('button[value=confirm]')
    await mine.page.locator('[role=alert]').waitFor()
    expect(await mine.page.locator('tr', { hasText: 'Bedrooms' }).textContent()).toBe('Bedrooms65')
    expect(await field(mine.page, '/bedrooms').inputValue()).toBe('6')
    expect(await accessFaults(mine.page)).toEqual([])
    expect(await overflow(mine.page)).toBeLessThanOrEqual(0)
    const [permit, ...others] = await filed(papers[0]!.truth.parcelNumber)
    expect([permit!.record.bedrooms, others]).toEqual([5, []])
    await mine.context.close()
    await theirs.context.close()
  })
})

inBrowser('what stands on it', () => {
  test('nothing for axe to find and nothing too wide, on a phone, at a desk, in the dark and enlarged; and light', async () => {
    const waiting = await waitingPaper(service, reviewer, 'card-1958', 'form-2015')
    const aside = await waitingPaper(service, reviewer, 'form-1986')
    must(
      await setAside(services, reviewer, {
        document: aside.id,
        version: undefined,
        reason: 'The second page is missing.',
      }),
    )
    const { page, context, faults } = await open({ viewport: PHONE })
    const { walk, left } = walkOf('documents')
    for (const { id } of [waiting, aside]) {
      await page.goto(`${here}/${id}`)
      await walk(page, '/counties/:county/documents/:id', id, looksRight)
    }
    await page.goto(here)
    await walk(page, '/counties/:county/documents', 'the list', looksRight)
    expect([...left]).toEqual([])
    expect(faults).toEqual([])
    await context.close()
  })

  test('the value in focus is never behind the scan on a phone', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const { page, context } = await open({ viewport: PHONE })
    await page.goto(`${here}/${id}`)
    await page.locator('.confirm.live').waitFor()
    for (let press = 0; press < 30; press++) {
      await page.keyboard.press(press % 6 === 5 ? 'Shift+Tab' : 'Tab')
      const hidden = await page.evaluate<string | null>(`(() => {
        const it = document.activeElement, box = it.getBoundingClientRect()
        const over = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2)
        return it.closest('form.values') && over?.closest('.paper') ? it.outerHTML.slice(0, 80) : null
      })()`)
      expect(hidden).toBeNull()
    }
    await context.close()
  })
})
