/** What can't happen did: a fault in this program, never in what a person sent. Ends as 500 with an id only. */
export class Impossible extends Error {
  override readonly name = 'Impossible'
}

export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Impossible(message)
}

/** Closes a switch over a union: the compiler complains where a member is not handled. */
export function unreachable(value: never, what: string): never {
  throw new Impossible(`unhandled ${what}: ${JSON.stringify(value)}`)
}
