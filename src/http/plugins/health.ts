import { setTimeout as wait } from 'node:timers/promises'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { problem } from '../problem.ts'
import type { Services } from '../services.ts'

const state = z.object({ state: z.literal('ok') })

/** Whoever watches asks every few seconds, and takes no answer for a bad one. */
const PATIENCE_MS = 3_000

/** live: the process answers. ready: what it needs answers too, so that requests may be sent here. */
export function answerHealth(app: FastifyInstance, { database, files, jobs }: Services): void {
  const options = (operationId: string, summary: string) => ({
    config: { access: 'open' as const },
    schema: { operationId, summary, tags: ['Service'], response: { 200: state } },
  })
  const checks = {
    database: soon(() => database.ping()),
    disk: soon(() => files.check()),
    jobs: soon(() => jobs.check()),
  }
  const names = Object.keys(checks)
  app.get('/health/live', options('isLive', 'Whether the process answers'), async (_request, reply) => {
    reply.header('cache-control', 'no-store')
    return { state: 'ok' as const }
  })
  app.get('/health/ready', options('isReady', 'Whether requests can be served'), async (_request, reply) => {
    reply.header('cache-control', 'no-store')
    const results = await Promise.allSettled(Object.values(checks).map((check) => check()))
    const missing = names.filter((_, index) => results[index]?.status === 'rejected')
    if (missing.length === 0) return { state: 'ok' as const }
    throw problem('unavailable', {
      detail: `Not available: ${missing.join(', ')}.`,
      headers: { 'retry-after': '5' },
    })
  })
}

/** A check with a limit of time. One that still hangs is not asked again beside itself. */
function soon(check: () => Promise<void>): () => Promise<void> {
  let asking: Promise<void> | undefined
  return () => {
    asking ??= check().finally(() => {
      asking = undefined
    })
    const late = wait(PATIENCE_MS, undefined, { ref: false }).then(() => {
      throw new OutsideFailure('No answer in time', { retryAfterSeconds: 5 })
    })
    late.catch(() => {})
    return Promise.race([asking, late])
  }
}
