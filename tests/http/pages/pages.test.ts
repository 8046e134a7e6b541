import { describe, expect, test } from 'vitest'
import { OutsideFailure } from '../../../src/base/outside-failure.ts'
import { PUBLIC_FILES } from '../../../src/http/pages/public-files.ts'
import { livedCounty, type Who } from '../../support/lived-county.ts'

const { app, tokens, services } = await livedCounty()
const here = '/counties/quillback'

const get = (who: Who | 'nobody', url: string, headers: Record<string, string> = {}) =>
  app.inject({
    url,
    headers: {
      accept: 'text/html',
      ...(who === 'nobody' ? {} : { authorization: `Bearer ${tokens[who]}` }),
      ...headers,
    },
  })
const status = async (who: Who | 'nobody', url: string) => (await get(who, url)).statusCode

/** Every page by every role: 200 it is theirs, 303 it leads on, 404 it is not there for them. */
const PAGES: readonly (readonly [string, { readonly [W in Who | 'nobody']: number }])[] = [
  [`${here}/search`, { reviewer: 200, firm: 200, agent: 200, nobody: 303 }],
  [`${here}/queue`, { reviewer: 200, firm: 404, agent: 404, nobody: 303 }],
  [`${here}/overview`, { reviewer: 200, firm: 404, agent: 404, nobody: 303 }],
  [`${here}/patterns`, { reviewer: 200, firm: 404, agent: 404, nobody: 303 }],
  [`${here}/rules`, { reviewer: 200, firm: 404, agent: 404, nobody: 303 }],
  [`${here}/rules/quillback/code`, { reviewer: 200, firm: 404, agent: 404, nobody: 303 }],
  [`${here}/inspections`, { reviewer: 404, firm: 200, agent: 404, nobody: 303 }],
  [`${here}/parcels/07-0441-0003`, { reviewer: 200, firm: 200, agent: 200, nobody: 303 }],
  [`${here}/parcels/07-0441-0003/brief`, { reviewer: 200, firm: 200, agent: 404, nobody: 303 }],
  ['/counties/elsewhere/queue', { reviewer: 404, firm: 404, agent: 404, nobody: 303 }],
  [`${here}`, { reviewer: 303, firm: 303, agent: 303, nobody: 303 }],
  ['/', { reviewer: 303, firm: 303, agent: 303, nobody: 303 }],
  ['/sign-in', { reviewer: 200, firm: 200, agent: 200, nobody: 200 }],
]

describe.each(PAGES)('%s', (url, expected) => {
  test.each(Object.entries(expected) as [Who | 'nobody', number][])('as %s: %i', async (who, code) => {
    expect(await status(who, url)).toBe(code)
  })
})

describe('the search', () => {
  const to = async (asked: string) => {
    const answer = await get('agent', `${here}/search?q=${encodeURIComponent(asked)}`)
    return [answer.statusCode, answer.headers.location ?? answer.body.match(/<h1>(.*?)<\/h1>/)?.[1]]
  }

  test.each([
    ['07-0441-0003', `${here}/parcels/07-0441-0003`],
    ['7 441 3', `${here}/parcels/07-0441-0003`],
    ['0704410003', `${here}/parcels/07-0441-0003`],
    ['07/0441/0003', `${here}/parcels/07-0441-0003`],
  ])('takes %j straight to the parcel', async (asked, place) => expect(await to(asked)).toEqual([303, place]))

  test('takes an address with a typo to the only one like it, and says so there', async () => {
    const [code, place] = await to('58 Sedg Pond Rd')
    expect([code, place]).toEqual([
      303,
      `${here}/parcels/07-0441-0003?asked=58%20Sedg%20Pond%20Rd&by=${String(place).split('by=')[1]}`,
    ])
    expect((await get('agent', String(place))).body).toMatch(/role="status">.*58 Sedg Pond Rd/)
  })

  test('lists what an old number became', async () => {
    const split = await get('reviewer', `${here}/search?q=sedge%20pond`)
    expect([split.statusCode, (split.body.match(/class="hits"/g) ?? []).length]).toEqual([200, 1])
  })

  test('helps where there is nothing', async () => {
    expect(await to('99 Nowhere Blvd')).toEqual([200, 'Nothing found for “99 Nowhere Blvd”'])
  })

  test('what was asked for stands in the answer as text', async () => {
    const { body } = await get('agent', `${here}/search?q=${encodeURIComponent('"><script>x</script>')}`)
    expect(body).not.toContain('<script>x')
  })
})

describe('what an agent is shown', () => {
  test.each(['07-0441-0003', '07-0412-0031', '07-0458-0037', '07-0482-0003'])(
    '%s: the status, and nothing of who wrote what',
    async (number) => {
      const { body } = await get('agent', `${here}/parcels/${number}`)
      expect(body).toMatch(/The owner must act|An inspector must inspect again|The county is reviewing it/)
      for (const kept of [
        'Site Inspection',
        'Lakeside',
        'permit 7',
        'records review',
        'reconciliations',
        ' ± ',
        'Found',
      ]) {
        expect(body, kept).not.toContain(kept)
      }
    },
  )
})

describe('what a firm is shown', () => {
  test('is the record, and its own findings beside it', async () => {
    const { body } = await get('firm', `${here}/parcels/07-0441-0003`)
    expect(body).toContain('Inspection by Lakeside Site Inspection')
    expect(body).not.toContain('<form method="post" action="/counties/quillback/discrepancies')
  })

  test('is the record by itself where only another firm has been, and that nothing of it is theirs to see', async () => {
    const { body } = await get('firm', `${here}/parcels/07-0446-0019`)
    expect(body).toContain('The record as it is now. You have not submitted an inspection here.')
    expect(body).toContain('are shown only to them and to the county')
    expect(body).toMatch(/<h3>Tank<\/h3>/)
    expect(body).toContain('(recorded, one of two)')
  })

  test('is nothing of a rival’s', async () => {
    const { body } = await get('firm', `${here}/parcels/07-0446-0019`)
    expect(body).not.toContain('Lowland')
    expect(body).not.toContain("20'-9")
    const brief = await get('firm', `${here}/parcels/07-0446-0019/brief`)
    expect(brief.body).not.toContain('as found')
  })
})

describe('a failure is told in words', () => {
  test('an address that nothing has', async () => {
    const answer = await get('reviewer', '/nowhere')
    expect([answer.statusCode, answer.headers['content-type']]).toEqual([404, 'text/html; charset=utf-8'])
    expect(answer.body).toContain('<h1>Page not found</h1>')
  })

  test('a parcel that is not there', async () => {
    expect((await get('reviewer', `${here}/parcels/99-9999-9999`)).body).toContain('Page not found')
  })

  test('to a program as a problem', async () => {
    const answer = await app.inject({ url: '/nowhere', headers: { accept: 'application/json' } })
    expect([answer.statusCode, answer.json().type]).toEqual([404, '/problems/not-found'])
  })

  /** Asks while every question to the database fails so. */
  async function whileItFails(fault: Error) {
    const { perform } = services.database
    const fails = () => {
      throw fault
    }
    Object.assign(services.database, { perform: fails })
    try {
      return await get('reviewer', `${here}/overview`)
    } finally {
      Object.assign(services.database, { perform })
    }
  }

  test('a database that is gone: 503, with when to try again', async () => {
    const answer = await whileItFails(new OutsideFailure('The database is gone.', { retryAfterSeconds: 5 }))
    expect([answer.statusCode, answer.headers['retry-after']]).toEqual([503, '5'])
    expect(answer.body).toContain('<h1>Not available right now</h1>')
    expect(answer.body).toContain('Nothing you sent was saved')
  })

  test('what can’t be: 500 with an id to tell, and nothing of how it came about', async () => {
    const answer = await whileItFails(new Error('secret innards'))
    expect(answer.statusCode).toBe(500)
    expect(answer.body).toContain(`<code>${answer.headers['x-request-id']}</code>`)
    expect(answer.body).not.toContain('innards')
  })
})

describe('the policy', () => {
  test('allows nothing inline and nothing from elsewhere', async () => {
    const { headers } = await get('reviewer', `${here}/queue`)
    const policy = String(headers['content-security-policy'])
    expect(policy).toContain("default-src 'none'")
    expect(policy).not.toContain('unsafe')
    expect(headers['cache-control']).toBe('private, no-cache')
  })

  test('a public file may be kept for ever, and is not found under another hash', async () => {
    const sheet = PUBLIC_FILES.get('sheet.css')!
    const kept = await get('nobody', sheet.path)
    expect([kept.statusCode, kept.headers['cache-control']]).toEqual([
      200,
      'public, max-age=31536000, immutable',
    ])
    expect(await status('nobody', '/assets/sheet.0000000000.css')).toBe(404)
  })
})

describe('over the wire', () => {
  /** Bytes, compressed as every browser asks for it. */
  const weigh = async (who: Who, url: string) =>
    (await get(who, url, { 'accept-encoding': 'gzip, br' })).rawPayload.length

  test('the sheet weighs under 6 kB', () => {
    expect(PUBLIC_FILES.get('sheet.css')!.gzipped.length).toBeLessThan(6_000)
  })

  test('no page weighs 60 kB', async () => {
    const { body } = await get('reviewer', `${here}/queue?state=all`)
    const parcels = [
      ...new Set([...body.matchAll(/parcels\/(\d{2}-\d{4}-\d{4})/g)].map(([, number]) => number!)),
    ]
    expect(parcels.length).toBeGreaterThan(10)
    const weights = [
      await weigh('reviewer', `${here}/queue?state=all`),
      await weigh('reviewer', `${here}/overview`),
      ...(await Promise.all(parcels.map((number) => weigh('reviewer', `${here}/parcels/${number}`)))),
      ...(await Promise.all(
        [...services.book.packs.keys()].map((pack) => weigh('reviewer', `${here}/rules/${pack}`)),
      )),
    ]
    expect(Math.max(...weights)).toBeLessThan(60_000)
  })
})
