import { BEFORE_THE_FIRST, chainName, entryHash, entrySays } from './entry.ts'
import type { Head } from './head.ts'
import type { HashedEntry } from './read-entries.ts'

export type Followed = {
  readonly head: Head
  /** What is wrong with the first bad entry, in words; undefined where every entry follows the one before it. */
  readonly fault: string | undefined
}

/**
 * Follows a chain from its first entry and stops at the first that does not follow. `known` are heads that were noted
 * outside the database earlier: who rewrites a whole chain can make it follow, but not end in what was noted.
 */
export async function followChain(
  county: string,
  entries: AsyncIterable<HashedEntry>,
  known: readonly Head[] = [],
): Promise<Followed> {
  let head: Head = { county, number: 0, hash: BEFORE_THE_FIRST }
  const noted = new Map(known.filter((it) => it.county === county).map((it) => [it.number, it.hash]))
  for await (const { entry, hash } of entries) {
    const fault = faultOf(head, { entry, hash }, noted)
    if (fault) return { head, fault }
    head = { county, number: entry.number, hash }
    noted.delete(entry.number)
  }
  const [beyond] = [...noted.keys()]
  if (beyond === undefined) return { head, fault: undefined }
  const fault = `entry ${beyond} of ${chainName(county)} was noted and is not there: the chain ends with entry ${head.number}`
  return { head, fault }
}

function faultOf(
  before: Head,
  { entry, hash }: HashedEntry,
  noted: ReadonlyMap<number, string>,
): string | undefined {
  const expected = before.number + 1
  if (entry.number !== expected) {
    return `entry ${expected} of ${chainName(entry.county)} is missing: the next is ${entrySays(entry)}`
  }
  if (entryHash(before.hash, entry) !== hash) {
    const after = before.number === 0 ? 'begin the chain' : `follow entry ${before.number}`
    return `${entrySays(entry)} does not ${after}: it, or the one before it, is not as it was written`
  }
  const knownHash = noted.get(entry.number)
  if (knownHash !== undefined && knownHash !== hash) {
    return `${entrySays(entry)} is another than was noted: the chain was written anew, there or before`
  }
  return undefined
}
