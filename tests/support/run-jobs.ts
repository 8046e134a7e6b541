import { uuidv7 } from 'uuidv7'
import { jobHandlers } from '../../src/operations/job-handlers.ts'
import type { TestApp } from './app.ts'

/** Runs the jobs that were left since it was last called, and those that they leave, one after the other. */
export function jobRunner({
  services,
  jobs,
}: Pick<TestApp, 'services' | 'jobs'>): () => Promise<readonly unknown[]> {
  let next = jobs.length
  return async () => {
    const results: unknown[] = []
    for (; next < jobs.length; next++) {
      const { kind, actor, data } = jobs[next]!
      const run = { id: uuidv7(), actor, data, report: async () => {}, signal: new AbortController().signal }
      const handlers = jobHandlers(services) as unknown as Record<string, (run: unknown) => Promise<unknown>>
      results.push(await handlers[kind]!(run))
    }
    return results
  }
}
