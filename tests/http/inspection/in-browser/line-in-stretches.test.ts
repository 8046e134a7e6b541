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
const rowsShown = (page: Page, field: string) =>
  page.locator(`details:has(#f-${field}-fault) .row`).filter({ visible: true }).count()

inBrowser('one line of two materials', () => {
  test('is typed stretch by stretch without signal, and sent as one line', async () => {
    const { number, at } = await parcel()
    const { page, context, faults } = await phoneAt(at)
    await ready(page)
    await page.locator('label', { has: page.locator('input[name="ground"][value="dry"]') }).tap()
    await page.locator('#f-leftOutBecause').selectOption('no-time')
    await context.setOffline(true)
    await goTo(page, 'Line')
    await press(page, /^Found$/)
    await page.locator('summary').filter({ hasText: 'more than one material' }).tap()
    expect(await rowsShown(page, 'segments')).toBe(1)
    const fill = async (row: number, from: string, to: string, material: string) => {
      await page.locator(`#f-segments-${row}-from`).fill(from)
      await page.locator(`#f-segments-${row}-to`).fill(to)
      await page.locator(`#f-segments-${row}-material`).selectOption(material)
    }
    await fill(0, '0 ft', '31 ft', 'vitrified-clay')
    await soon(() => rowsShown(page, 'segments')).toBe(2)
    await fill(1, '28 ft', '60 ft', 'pvc')
    await page.locator('#f-segments-1-pipeDiameter').focus()
    // What is wrong is said at its row, still without signal.
    await soon(() => shown(page, '#f-segments-1-from-fault')).toMatch(
      /3 ft over the stretch that ends at 31 ft/,
    )
    await page.locator('#f-segments-1-from').fill('31 ft')
    await page.locator('#f-measuredFrom').selectOption('tank')
    await page.locator('summary').filter({ hasText: 'Defects' }).tap()
    await page.locator('#f-defects-0-at').fill('42 ft')
    await page.locator('#f-defects-0-seen').selectOption('root-intrusion')
    await soon(() => shown(page, '#live')).toMatch(/31 to 60 ft/)
    await page.setViewportSize({ width: PHONE.width, height: 5000 })
    expect(await accessFaults(page)).toEqual([])
    expect(await overflow(page)).toBeLessThanOrEqual(0)
    await page.setViewportSize(PHONE)
    expect(await smallTargets(page)).toEqual([])

    await goTo(page, 'Tank')
    await goTo(page, 'Line')
    expect(await page.locator('#f-segments-1-to').inputValue()).toBe('60 ft')
    await goTo(page, 'Review and submit')
    await context.setOffline(false)
    await page.locator('.bar button[value="next"]').tap()
    await soon(async () => (await findingsOf(number))[0]?.record.components.length).toBe(1)
    const [{ record }] = await findingsOf(number)
    expect(record.components).toMatchObject([
      {
        label: 'line',
        measuredFrom: 'tank',
        segments: [
          { from: { asWritten: '0 ft' }, to: { asWritten: '31 ft' }, material: 'vitrified-clay' },
          { from: { asWritten: '31 ft' }, to: { asWritten: '60 ft' }, material: 'pvc' },
        ],
        defects: [{ at: { asWritten: '42 ft' }, seen: 'root-intrusion' }],
      },
    ])
    expect(faults.filter((it) => !it.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([])
  })
})
