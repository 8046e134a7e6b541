import type { JobHandlers } from '../jobs/queue.ts'
import type { OperationContext } from './context.ts'

/** Which operation does each kind of job. A kind without a handler waits in the queue. */
export const jobHandlers = (_context: OperationContext): Partial<JobHandlers> => ({})
