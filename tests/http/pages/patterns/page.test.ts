import { expect, test } from 'vitest'
import { testApp } from '../../../support/app.ts'

const { app, people } = await testApp()
const ask = (who: 'reviewer' | 'firm' | 'agent', page: string) =>
  app.inject({
    url: `/counties/quillback/${page}`,
    headers: { accept: 'text/html', authorization: `Bearer ${people[who].token}` },
  })

test('an empty county says so, and the overview leads there', async () => {
  const { statusCode, body } = await ask('reviewer', 'patterns')
  expect([statusCode, body.includes('Nothing to compare yet')]).toEqual([200, true])
  expect((await ask('reviewer', 'overview')).body).toContain('href="/counties/quillback/patterns"')
})

test('it is there for reviewers alone', async () => {
  for (const who of ['firm', 'agent'] as const) expect((await ask(who, 'patterns')).statusCode).toBe(404)
})
