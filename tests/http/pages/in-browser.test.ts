import type { BrowserContextOptions } from 'playwright-core'
import { beforeAll, expect, test, vi } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { setPassword } from '../../../src/operations/access/set-password.ts'
import { addAccount, addOrganization, issueToken } from '../../../src/store/access/enrol.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { accessFaults, DESK, inBrowser, openPage, PHONE } from '../../support/browser.ts'
import { livedCounty } from '../../support/lived-county.ts'
import { looksRight, unfold } from '../../support/looks-right.ts'
import { isAt, LIGHT, weightOf } from '../../support/walk.ts'
import { WALKED, type WalkedRoute } from '../../support/walked.ts'
import { makePages } from './made-pages.ts'

// Other work may share the machine, and axe looks at every element of long pages.
vi.setConfig({ testTimeout: 120_000 })

const county = await livedCounty()
const { origin, tokens, cast, services } = county
const here = `${origin}/counties/quillback`

/** A firm that works in those counties. */
const firmIn = (...counties: readonly string[]) =>
  administer(services.database, async (tx) => {
    const name = `A firm in ${counties.length}`
    const organization = await addOrganization(tx, { kind: 'firm', name, counties })
    const account = await addAccount(tx, { organization, role: 'firm', label: 'field crew' })
    return issueToken(tx, { account, name: 'tests', counties })
  })
const bearers = { ...tokens, inTwo: await firmIn('quillback', 'elsewhere'), inNone: await firmIn() }

const as = (who: keyof typeof bearers | 'nobody', options: BrowserContextOptions = {}) =>
  openPage({
    ...options,
    ...(who === 'nobody' ? {} : { extraHTTPHeaders: { authorization: `Bearer ${bearers[who]}` } }),
  })

const made = await makePages(county)

type Shown = readonly (readonly [what: string, who: keyof typeof bearers | 'nobody', url: string])[]
const PAGES: { readonly [R in WalkedRoute<'everyPage'>]: Shown } = {
  '/': [
    ['which county', 'inTwo', `${origin}/`],
    ['no county', 'inNone', `${origin}/`],
  ],
  '/sign-in': [['sign-in', 'nobody', `${origin}/sign-in`]],
  '/letters': [['where a letter is checked', 'nobody', `${origin}/letters`]],
  '/letters/:code': [['a letter checked', 'nobody', `${origin}${made.aLetter}`]],
  '/counties/:county/search': [
    ['the search', 'agent', `${here}/search`],
    ['a list of parcels', 'agent', `${here}/search?q=heron`],
    ['nothing found', 'agent', `${here}/search?q=99%20Nowhere`],
  ],
  '/counties/:county/parcels/:parcel': [
    ['a status, with a letter and an address that is told', 'agent', `${here}/parcels/07-0462-0026`],
    ['a parcel’s file', 'reviewer', `${here}/parcels/07-0446-0033`],
    ['a file with a decision whose ground moved', 'reviewer', `${here}/parcels/07-0458-0037`],
    ['a status of two systems', 'agent', `${here}/parcels/07-0490-0012`],
    ['a file of two systems', 'reviewer', `${here}/parcels/07-0490-0012`],
    ['a firm’s view of its file', 'firm', `${here}/parcels/07-0441-0003`],
    ['a firm’s view of another’s', 'firm', `${here}/parcels/07-0446-0019`],
  ],
  '/counties/:county/parcels/:parcel/brief': [
    ['an inspection brief', 'firm', `${here}/parcels/07-0446-0033/brief`],
  ],
  '/counties/:county/parcels/:parcel/systems': [
    ['the systems of a parcel', 'reviewer', `${here}/parcels/07-0490-0020/systems`],
  ],
  '/counties/:county/reconciliations/:id': [
    ['a comparison as it was', 'reviewer', `${origin}${made.asItWas}`],
  ],
  '/counties/:county/changes': [['what changed', 'agent', `${here}/changes`]],
  '/counties/:county/queue': [['the queue', 'reviewer', `${here}/queue`]],
  '/counties/:county/overview': [['the county overview', 'reviewer', `${here}/overview`]],
  '/counties/:county/patterns': [['the patterns across the county', 'reviewer', `${here}/patterns`]],
  '/counties/:county/rules': [['the rules', 'reviewer', `${here}/rules`]],
  '/counties/:county/rules/:place/:topic': [['a pack of rules', 'reviewer', `${here}/rules/quillback/code`]],
  '/counties/:county/rules/trial': [
    ['where other rules are tried', 'reviewer', `${here}/rules/trial?of=public-health-service/tanks`],
  ],
  '/counties/:county/rules/trials/:id': [['a trial of rules', 'reviewer', `${origin}${made.aTrial}`]],
  '/counties/:county/imports': [['the imports', 'reviewer', `${here}/imports`]],
  '/counties/:county/imports/:id': [['an import', 'reviewer', `${origin}${made.anImport}`]],
  '/counties/:county/forms': [['the forms that papers taught', 'reviewer', `${here}/forms`]],
  '/counties/:county/forms/:id': [['a form', 'reviewer', `${origin}${made.aForm}`]],
  '/counties/:county/inspections': [['the inspections', 'firm', `${here}/inspections`]],
}
const SHOWN = WALKED.everyPage.flatMap((route) => PAGES[route].map((shown) => [...shown, route] as const))

inBrowser('every page', () => {
  test('axe is awake: it finds a picture without words', async () => {
    const { page, context } = await as('nobody')
    await page.goto(`${origin}/sign-in`)
    await page.evaluate('document.querySelector("main").append(new Image(9, 9))')
    expect((await accessFaults(page)).join()).toContain('image-alt')
    await context.close()
  })

  test.each([...SHOWN, ['an address that is not there', 'nobody', `${origin}/nowhere`, '/nowhere'] as const])(
    '%s: nothing for axe to find, nothing too wide, nothing refused, nothing lost, and light',
    async (what, who, url, route) => {
      const { page, context, faults } = await as(who, { viewport: PHONE })
      await page.goto(url)
      isAt(page, route)
      expect(await weightOf(page), 'bytes over the wire').toBeLessThan(LIGHT)
      await looksRight(page, what)
      expect(faults).toEqual([])
      await context.close()
    },
  )
})

inBrowser('a reviewer', () => {
  const name = 'records.desk'
  const password = 'a long and quiet river'
  beforeAll(async () => {
    const { account } = cast.reviewer
    must(await setPassword(services.database, { account, name, password }))
  })

  test('with the keyboard alone signs in, finds the worst in the queue, opens its proof and decides it', async () => {
    const { page, context, faults } = await as('nobody', { viewport: DESK })
    const focused = () => page.evaluate<string>('document.activeElement.textContent')
    const tabTo = async (text: RegExp | string) => {
      for (let presses = 0; presses < 80; presses++) {
        await page.keyboard.press('Tab')
        const there = await focused()
        if (typeof text === 'string' ? text === there : text.test(there)) return
      }
      throw new Error(`no press of Tab came to ${text}`)
    }
    await page.goto(`${here}/queue?severity=action`)
    await page.locator('#name:focus').waitFor()
    await page.keyboard.type(name)
    await page.keyboard.press('Tab')
    await page.keyboard.type(password)
    await page.keyboard.press('Enter')
    await page.waitForURL(`${here}/queue?severity=action`)

    await tabTo((await page.locator('.queue a.go').first().textContent())!)
    const first = await focused()
    await page.keyboard.press('j')
    const second = await focused()
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('k')
    expect(await focused()).toBe(second)
    expect(second).not.toBe(first)
    await page.keyboard.press('ArrowUp')
    expect(await focused()).toBe(first)
    await page.keyboard.press('k')
    expect(await focused()).toBe(first)

    await page.keyboard.press('j')
    await page.keyboard.press('Enter')
    await page.waitForURL(/parcels\/.+#d-/)
    const target = page.locator('.difference:target')
    await target.waitFor()
    expect(await target.getAttribute('class')).toContain('action')

    // From the place the address names, the next stop is the decision about it.
    await tabTo(/^Decide$/)
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Tab')
    await page.keyboard.type('The cover must be secured this week.')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await page.waitForURL(/done=/)
    expect(await page.locator('.difference:target .decision').textContent()).toContain(
      'The cover must be secured this week.',
    )
    expect(await page.locator('[role=status]').textContent()).toContain('Your decision is saved')
    expect(faults).toEqual([])
    await context.close()
  })

  test('without JavaScript filters the queue, opens a parcel, is told what to mend, and corrects the record', async () => {
    const { page, context } = await as('reviewer', { viewport: DESK, javaScriptEnabled: false })
    await page.goto(`${here}/queue`)
    await page.selectOption('#f-kind', 'capacity-below-record')
    await page.click('.filters button')
    expect(page.url()).toContain('kind=capacity-below-record')
    await page.locator('.queue a.go').first().click()
    const difference = page.locator('.difference:target')
    await difference.locator('.decide > summary').click()
    expect(await difference.locator('[name=value]').isVisible()).toBe(false)
    await difference.locator('[value=correct-record]').check()
    expect(await difference.locator('[name=value]').isVisible()).toBe(true)
    await difference.locator('[name=value]').fill('seven fifty')
    await difference.locator('[name=reason]').fill('The card reads 750.')
    await difference.locator('form button').click()

    const again = page.locator('.difference', { has: page.locator('[aria-invalid]') })
    expect(await again.locator('.fault').first().textContent()).toMatch(/seven fifty|gal/)
    expect(await again.locator('[name=value]').inputValue()).toBe('seven fifty')
    expect(await again.locator('[name=reason]').inputValue()).toBe('The card reads 750.')
    expect(await accessFaultsWithoutScripts(page.url(), await page.content())).toEqual([])
    await again.locator('[name=value]').fill('750 gal')
    await again.locator('form button').click()
    expect(page.url()).toContain('done=')
    expect(await page.locator('.history').textContent()).toContain('capacity set to 750 gal')
    await context.close()
  })

  test('takes a line of the comparison to what it rests on, and back to how it stood before', async () => {
    const { page, context } = await as('reviewer', { viewport: PHONE })
    await page.goto(`${here}/parcels/07-0446-0027`)
    const tank = page.locator('.part', { has: page.locator('h3', { hasText: /^Tank$/ }) })
    const line = tank.locator('details.line', { has: page.locator('.what', { hasText: /^ties$/ }) })
    await line.locator('summary').click()
    const proof = await line.locator('.proof').textContent()
    expect(proof).toContain('Is it where the ties put it?')
    expect(proof).toContain('permit 80-66')
    expect(proof).toContain('d = √((x′ − x)² + (y′ − y)²)')
    await page.locator('.history a', { hasText: 'see it as it was' }).first().click()
    expect(await page.locator('[role=note]').textContent()).toContain('This is the comparison made on')
    await unfold(page)
    expect(await accessFaults(page)).toEqual([])
    await context.close()
  })
})

inBrowser('an agent', () => {
  test('finds a parcel by a misspelled address in one step, reads what is outstanding, and gets the letter', async () => {
    const { page, context } = await as('agent', { viewport: PHONE })
    await page.goto(`${here}/search`)
    await page.fill('#q', '58 Sedg Pond Rd')
    await page.keyboard.press('Enter')
    await page.waitForURL(/parcels\/07-0441-0003/)
    expect(await page.locator('.word').textContent()).toBe('Action needed')
    expect(await page.locator('.outstanding').textContent()).toMatch(/outlet baffle.*The owner must act/is)
    const letter = page.waitForResponse((answer) => answer.status() === 303, { timeout: 60_000 })
    await page.locator('button', { hasText: 'Get a status letter' }).click({ noWaitAfter: true })
    expect((await letter).headers().location).toMatch(/^\/v1\/letters\/.+\.pdf$/)
    await page.goto(`${here}/parcels/07-0441-0003`)
    expect(await page.locator('.papers').textContent()).toMatch(/Status letter .+: Action needed\. Check/)
    await context.close()
  })
})

inBrowser('a firm', () => {
  test('comes from its inspections to a brief that prints with its cautions and without the frame', async () => {
    const { page, context } = await as('firm', { viewport: PHONE })
    await page.goto(`${here}/inspections`)
    await page
      .locator('a', { hasText: /^Brief$/ })
      .first()
      .click()
    await page.waitForURL(/brief$/)
    expect(await page.locator('.cautions').textContent()).toContain('Never enter a tank')
    await page.emulateMedia({ media: 'print' })
    expect(await page.locator('.search').isVisible()).toBe(false)
    expect(await page.locator('.cautions').isVisible()).toBe(true)
    expect(await page.locator('.plan').isVisible()).toBe(true)
    await context.close()
  })
})

/** axe runs as a script: a page that was sent to a browser without them is looked at in one with them. */
async function accessFaultsWithoutScripts(url: string, content: string): Promise<readonly string[]> {
  const { page, context } = await as('reviewer', { viewport: DESK })
  await page.route(url, (route) => route.fulfill({ body: content, contentType: 'text/html' }))
  await page.goto(url)
  const faults = await accessFaults(page)
  await context.close()
  return faults
}
