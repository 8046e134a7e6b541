import { OutsideFailure } from './outside-failure.ts'

/** Does the work when its turn has come; throws OutsideFailure at once where too many wait already. */
export type Turns = <T>(who: string, work: () => Promise<T>) => Promise<T>

type Options = {
  readonly what: string
  readonly atOnce: number
  /** How many of these one may have to itself. */
  readonly each: number
  readonly mostWaiting: number
}

/**
 * So many at once and no more, in turns by who asks: whoever asks for a hundred waits behind themselves, and whoever
 * asks for one comes next.
 */
export function takingTurns({ what, atOnce, each, mostWaiting }: Options): Turns {
  const waiting = new Map<string, (() => void)[]>()
  const running = new Map<string, number>()
  let [inside, outside] = [0, 0]

  const begin = (who: string): void => {
    inside += 1
    running.set(who, (running.get(who) ?? 0) + 1)
  }
  const end = (who: string): void => {
    inside -= 1
    const left = (running.get(who) ?? 1) - 1
    if (left === 0) running.delete(who)
    else running.set(who, left)
    callNext()
  }
  const callNext = (): void => {
    for (const [who, queue] of waiting) {
      if (inside >= atOnce) return
      if ((running.get(who) ?? 0) >= each) continue
      const next = queue.shift()
      // To the end of the line, where it has more to ask.
      waiting.delete(who)
      if (queue.length > 0) waiting.set(who, queue)
      if (!next) continue
      outside -= 1
      begin(who)
      next()
    }
  }

  return async (who, work) => {
    if (inside < atOnce && (running.get(who) ?? 0) < each) begin(who)
    else {
      if (outside >= mostWaiting)
        throw new OutsideFailure(`Too many wait for ${what}`, { retryAfterSeconds: 5 })
      outside += 1
      await new Promise<void>((resolve) => {
        const queue = waiting.get(who)
        if (queue) queue.push(resolve)
        else waiting.set(who, [resolve])
      })
    }
    try {
      return await work()
    } finally {
      end(who)
    }
  }
}
