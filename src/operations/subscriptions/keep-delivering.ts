import type { OperationContext } from '../context.ts'
import { deliverDue, type Sending } from './deliver-due.ts'

type Options = Sending & {
  readonly everyMs?: number
  readonly onTrouble: (fault: Error) => void
}

/** Looks for due messages again and again until it is stopped; stopping waits for those that are on their way. */
export function keepDelivering(
  context: Pick<OperationContext, 'database' | 'clock'>,
  { everyMs = 2_000, onTrouble, ...sending }: Options,
): () => Promise<void> {
  let stopped = false
  let timer: NodeJS.Timeout | undefined
  let round: Promise<void> = Promise.resolve()
  const again = (afterMs: number) => {
    timer = setTimeout(() => {
      round = look()
    }, afterMs)
    timer.unref()
  }
  const look = async () => {
    let tried = 0
    try {
      tried = await deliverDue(context, sending)
    } catch (fault) {
      onTrouble(new Error('webhooks are waiting to be sent', { cause: fault }))
    }
    // More may be due than one round takes.
    if (!stopped) again(tried > 0 ? 0 : everyMs)
  }
  again(everyMs)
  return async () => {
    stopped = true
    clearTimeout(timer)
    await round
  }
}
