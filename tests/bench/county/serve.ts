/**
 * A server for the HTTP benches, in a process of its own. `node serve.ts ours <url>` is the whole service on a prepared
 * database; `node serve.ts bare <url>` is fastify with pg and nothing else: a one-row lookup, and an echo. Prints its port.
 */
import fastify from 'fastify'
import pg from 'pg'
import { settingsOrExit } from '../../../src/config.ts'
import { createLogger } from '../../../src/logger.ts'
import { startService } from '../../../src/service.ts'

const [kind, url] = process.argv.slice(2)
if (kind === 'bare') {
  const pool = new pg.Pool({ connectionString: url, max: 10 })
  const app = fastify()
  app.get<{ Params: { number: string } }>('/status/:number', async ({ params }) => {
    const { rows } = await pool.query({
      name: 'lookup',
      text: `select p.number, s.word, s.body from parcel p join parcel_status s on s.county = p.county and s.parcel = p.id
        where p.county = $1 and p.number = $2`,
      values: ['quillback', params.number],
    })
    return rows[0]
  })
  app.post('/echo', async ({ body }) => body)
  const address = await app.listen({ port: 0 })
  process.once('SIGTERM', () => process.exit(0))
  process.stdout.write(`${new URL(address).port}\n`)
} else {
  const settings = settingsOrExit({
    ...process.env,
    DATABASE_URL: url,
    PORT: '0',
    LOG_LEVEL: 'silent',
    MIGRATE: 'off',
    JOBS: process.env.JOBS ?? 'off',
    REQUESTS_PER_MINUTE: '1000000',
  })
  const service = await startService(settings, createLogger('silent'))
  process.once('SIGTERM', () => void service.stop().then(() => process.exit(0)))
  process.stdout.write(`${new URL(service.address).port}\n`)
}
