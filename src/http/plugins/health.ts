import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import type { Services } from '../app.ts'
import { problem } from '../problem.ts'

const state = z.object({ state: z.literal('ok') })

/** live: the process answers. ready: what it needs answers too, so that requests may be sent here. */
export function answerHealth(app: FastifyInstance, { database, files, jobs }: Services): void {
  const options = (operationId: string, summary: string) => ({
    config: { access: 'open' as const },
    schema: { operationId, summary, tags: ['Service'], response: { 200: state } },
  })
  app.get('/health/live', options('isLive', 'Whether the process answers'), async () => ({ state: 'ok' }))
  app.get('/health/ready', options('isReady', 'Whether requests can be served'), async () => {
    const checks = { database: database.ping(), files: files.check(), jobs: jobs.check() }
    const names = Object.keys(checks)
    const results = await Promise.allSettled(Object.values(checks))
    const missing = names.filter((_, index) => results[index]?.status === 'rejected')
    if (missing.length === 0) return { state: 'ok' }
    throw problem('unavailable', {
      detail: `Not available: ${missing.join(', ')}.`,
      headers: { 'retry-after': '5' },
    })
  })
}
