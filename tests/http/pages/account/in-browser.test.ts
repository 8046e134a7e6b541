import { beforeAll, expect, test, vi } from 'vitest'
import { must } from '../../../../src/base/result.ts'
import { codeAt } from '../../../../src/operations/access/one-time-code.ts'
import { setPassword } from '../../../../src/operations/access/set-password.ts'
import { inBrowser, openPage, PHONE } from '../../../support/browser.ts'
import { livedCounty } from '../../../support/lived-county.ts'
import { looksRight } from '../../../support/looks-right.ts'
import { silentProviders } from '../../../support/silent-provider.ts'
import { walkOf } from '../../../support/walk.ts'
import type { WalkedRoute } from '../../../support/walked.ts'

// Other work may share the machine, and axe looks at every element of a page.
vi.setConfig({ testTimeout: 120_000 })

const { origin, cast, services } = await livedCounty({ providers: silentProviders })
const name = 'records.desk'
const password = 'a long and quiet river'

inBrowser('somebody and their account', () => {
  beforeAll(async () => {
    must(await setPassword(services.database, { account: cast.reviewer.account, name, password }))
  })

  test('sets a second step up, invites, makes a token, signs in anew with a code; nothing for axe to find', async () => {
    const { page, context, faults } = await openPage({ viewport: PHONE })
    const { walk, left } = walkOf('account')
    const look = (route: WalkedRoute<'account'>, what: string) => walk(page, route, what, looksRight)
    const signIn = async () => {
      await page.goto(`${origin}/sign-in?to=/account`)
      await page.getByLabel('Name').fill(name)
      await page.getByLabel('Password').fill(password)
      await page.getByRole('button', { name: 'Sign in' }).click()
    }
    await signIn()
    expect(page.url()).toBe(`${origin}/account`)
    await look('/account', 'the account')

    await page.getByRole('link', { name: 'Turn it on' }).click()
    await look('/account/second-step', 'the second step')
    const secret = (await page.locator('code').first().textContent())!.replaceAll(' ', '')
    await page.getByLabel('Enter the six-digit code').fill(codeAt(secret, new Date()))
    await page.getByRole('button', { name: 'Turn it on' }).click()
    expect(await page.locator('main li code').count()).toBe(10)
    await look('/account/second-step', 'the recovery codes')
    const recovery = (await page.locator('main li code').first().textContent())!
    await page.getByRole('link', { name: 'I have saved my codes' }).click()

    await page.getByRole('link', { name: 'People' }).click()
    await page.getByLabel('Email or sign-in name').fill('second.desk@quillback.example')
    await page.getByLabel('What the account is for').fill('second desk')
    await page.getByRole('button', { name: 'Invite' }).click()
    await look('/people', 'the people')
    const link = (await page.locator('.notice code').textContent())!

    await page.goto(`${origin}/account`)
    await page.getByRole('link', { name: 'Tokens' }).click()
    await page.getByLabel('What it is for').fill('tablet')
    await page.getByRole('button', { name: 'Create token' }).click()
    expect(await page.locator('.notice code').textContent()).toMatch(/^asfound_/)
    await look('/tokens', 'the tokens')

    await page.goto(`${origin}/account`)
    await page.getByRole('link', { name: 'Organizations in the county' }).click()
    await look('/counties/:county/organizations', 'who works in the county')

    await page.getByRole('button', { name: 'Sign out' }).click()
    await signIn()
    await look('/sign-in/code', 'the code')
    await page.getByLabel('Code').fill(recovery)
    await page.getByRole('button', { name: 'Continue' }).click()
    expect(page.url()).toBe(`${origin}/account`)

    const { pathname, search } = new URL(link)
    await page.goto(`${origin}${pathname}${search}`)
    await look('/invitation', 'the invitation')
    await page.getByLabel('Password').fill('passwordpassword')
    await page.getByRole('button', { name: 'Save password' }).click()
    expect(await page.getByRole('alert').textContent()).toContain('tried first')
    await look('/invitation', 'the invitation, with a fault')

    await page.goto(`${origin}/sign-in/with/quillback/return`)
    expect(await page.locator('h1').textContent()).toBe('Not signed in')
    await look('/sign-in/with/:provider/return', 'back from a sign-in elsewhere that came to nothing')
    expect([...left]).toEqual([])
    expect(faults.filter((fault) => !fault.includes('422'))).toEqual([])
    await context.close()
  })
})
