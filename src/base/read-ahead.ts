/** The same in the same order, with the next one already under way while one is worked on. A fault comes in its turn. */
export async function* readAhead<T>(source: AsyncIterable<T>): AsyncGenerator<T> {
  const items = source[Symbol.asyncIterator]()
  const begin = () => {
    const next = items.next()
    // Told to whoever asks for it; until then it is nobody's.
    next.catch(() => {})
    return next
  }
  let next = begin()
  try {
    for (;;) {
      const { done, value } = await next
      if (done) return
      next = begin()
      yield value
    }
  } finally {
    await items.return?.()
  }
}
