import type { Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
import { accessFaults, inBrowser, overflow, PHONE } from '../../../support/browser.ts'
import {
  inspectionService,
  phoneAt,
  ready,
  shown,
  smallTargets,
  soon,
  title,
} from '../../../support/inspection-service.ts'

vi.setConfig({ testTimeout: 180_000 })

const { parcel, findingsOf } = await inspectionService()

const press = (page: Page, words: string | RegExp) =>
  page.locator('.big label, .tick').filter({ hasText: words, visible: true }).first().tap()
const goTo = async (page: Page, step: string) => {
  await page.locator('.walk summary').tap()
  await page.locator('.walk a').filter({ hasText: step }).first().tap()
  await soon(() => title(page)).toBe(step)
}

inBrowser('asked at the field, without signal', () => {
  test('an odd reading has a box beside it that says it is meant; another reading is asked about again', async () => {
    const { number, at } = await parcel()
    const { page, context } = await phoneAt(at)
    await ready(page)
    await context.setOffline(true)
    await goTo(page, 'Tank')
    await press(page, /^Found$/)
    await page.locator('#f-length').fill('84 ft')
    await page.locator('#f-width').focus()
    const box = page.locator('#f-length-meant')
    await soon(() => shown(page, '#f-length-fault')).toBe('84 ft? Did you mean 84 in?')
    await soon(() => shown(page, '#f-length-meant')).toBe('84 ft is what I read')
    await page.setViewportSize({ width: PHONE.width, height: 5000 })
    expect(await accessFaults(page)).toEqual([])
    expect(await overflow(page)).toBeLessThanOrEqual(0)
    await page.setViewportSize({ width: 1280, height: 900 })
    await page.setViewportSize(PHONE)
    expect(await smallTargets(page)).toEqual([])
    await box.tap()
    await soon(() => page.locator('#f-length-fault').isHidden()).toBe(true)
    expect(await box.locator('input').isChecked()).toBe(true)

    await page.locator('#f-length').fill('94 ft')
    await page.locator('#f-width').focus()
    await soon(() => shown(page, '#f-length-meant')).toBe('94 ft is what I read')
    expect(await box.locator('input').isChecked()).toBe(false)
    await box.tap()
    await goTo(page, 'Outlet baffle')
    await goTo(page, 'Tank')
    expect(await box.locator('input').isChecked()).toBe(true)
    expect(await page.locator('#f-length').inputValue()).toBe('94 ft')
    await context.setOffline(false)
    await page.reload()
    await ready(page)
    await soon(async () => (await findingsOf(number))[0]?.record.components[0]?.length?.asWritten).toBe(
      '94 ft, checked',
    )
  })

  test('what was left out with no reason is asked for at the look back, before there is signal', async () => {
    const { number, at } = await parcel()
    const { page, context } = await phoneAt(at)
    await ready(page)
    await context.setOffline(true)
    await page.locator('label', { has: page.locator('input[name="ground"][value="dry"]') }).tap()
    await goTo(page, 'Tank')
    await press(page, /^Found$/)
    await goTo(page, 'Review and submit')
    await soon(() => shown(page, '.notice.bad')).toMatch(/Before you begin.*whether sewage has backed up/s)
    expect(await shown(page, '.notice.bad')).toMatch(/Tank.*say how far the tank was opened/s)
    await page.setViewportSize({ width: PHONE.width, height: 2500 })
    await page.screenshot({ path: '/tmp/unsaid-phone.png', fullPage: true })
    await page.locator('.bar button[value="next"]').tap()
    await soon(() => title(page)).toBe('Review and submit')
    expect(await shown(page, '.notice')).toMatch(/Say what is listed here first/)

    await page.locator('.notice.bad a').filter({ hasText: 'Tank' }).tap()
    await soon(() => shown(page, '#f-opened-fault')).toMatch(/say how far the tank was opened/)
    await page.locator('label', { has: page.locator('input[name="opened"][value="not-opened"]') }).tap()
    await page.locator('#f-notOpenedBecause').selectOption('paved-over')
    await goTo(page, 'Before you begin')
    await page.locator('#f-leftOutBecause').selectOption('nobody-to-ask')
    await goTo(page, 'Review and submit')
    await soon(() => page.locator('.notice.bad').count()).toBe(0)
    await context.setOffline(false)
    await page.locator('.bar button[value="next"]').tap()
    await soon(async () => (await findingsOf(number))[0]?.state).toBe('submitted')
  })
})
