import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Job, jobById } from '../../store/jobs.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

/** How a job is doing: a firm or an agent sees its own, a reviewer those of the county. */
export const readJob = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<Job>> =>
  transact(context.database, actor, async (tx) => {
    const job = await jobById(tx, actor.county, id)
    return job ? ok(job) : notFound()
  })
