import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Job, jobById } from '../../store/jobs.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, invalid, notFound } from '../refusal.ts'
import { proposedBook } from './proposed-book.ts'

/** Leaves a proposed pack to be tried against the county; a faulty one is refused with every fault and its line. */
export async function beginTrial(
  context: OperationContext,
  actor: Person,
  yaml: string,
): Promise<Answer<string>> {
  const proposed = await proposedBook(yaml, actor.county)
  if (!proposed.ok) return invalid(...proposed.error)
  return transact(context.database, actor, async (tx) =>
    ok(await context.jobs.enqueue(tx, actor, 'try-rules', { yaml })),
  )
}

/** How a trial is doing, and what it came to once it is done. */
export const readTrial = (
  { database }: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<Job>> =>
  transact(database, actor, async (tx) => {
    const job = await jobById(tx, actor.county, id)
    return job?.kind === 'try-rules' ? ok(job) : notFound()
  })
