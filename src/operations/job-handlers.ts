import type { JobHandlers } from '../jobs/queue.ts'
import { OCCASIONS, type Occasion } from '../store/reconciliations.ts'
import type { OperationContext } from './context.ts'
import { readPaper } from './documents/read-paper.ts'
import { learnFromPaper } from './forms/learn-from-paper.ts'
import { proposeAgain } from './forms/propose-again.ts'
import { runImport } from './imports/run-import.ts'
import { reconcileParcel } from './reconciliation/reconcile-parcel.ts'
import { shareRerun } from './reruns/share-rerun.ts'
import { tryRules } from './rule-trials/try-rules.ts'

/** Which operation does each kind of job. A kind without a handler waits in the queue. */
export const jobHandlers = (context: OperationContext): JobHandlers => ({
  'read-document': (run) => readPaper(context, run),
  'share-rerun': (run) => shareRerun(context, run),
  'run-import': (run) => runImport(context, run),
  'try-rules': (run) => tryRules(context, run),
  'learn-form': (run) => learnFromPaper(context, run),
  'propose-again': (run) => proposeAgain(context, run),
  'reconcile-parcel': async ({ actor, data }) => {
    const occasion: Occasion = OCCASIONS.find((it) => it === data.occasion) ?? 'asked-for'
    const { reconciliation, changes, status } = await reconcileParcel(context, actor, data.parcel, occasion)
    return { reconciliation: reconciliation.id, changes: changes.length, status: status.word }
  },
})
