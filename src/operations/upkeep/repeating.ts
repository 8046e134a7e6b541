export type Repeating = {
  readonly firstMs: number
  readonly everyMs: number
  /** What goes on as it was where a round failed, in words. */
  readonly failing: string
  readonly onTrouble: (fault: Error) => void
}

/** Does something again and again until it is stopped; stopping calls the round under way off and waits for it. */
export function repeating(
  round: (signal: AbortSignal) => Promise<unknown>,
  { firstMs, everyMs, failing, onTrouble }: Repeating,
): () => Promise<void> {
  const stopping = new AbortController()
  let timer: NodeJS.Timeout | undefined
  let underWay: Promise<void> = Promise.resolve()
  const again = (afterMs: number): void => {
    timer = setTimeout(() => {
      underWay = round(stopping.signal).then(
        () => {},
        (fault) => {
          if (!stopping.signal.aborted) onTrouble(new Error(failing, { cause: fault }))
        },
      )
      void underWay.then(() => {
        if (!stopping.signal.aborted) again(everyMs)
      })
    }, afterMs)
    timer.unref()
  }
  again(firstMs)
  return async () => {
    stopping.abort()
    clearTimeout(timer)
    await underWay
  }
}
