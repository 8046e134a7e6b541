import type { Readable } from 'node:stream'
import { problem } from '../../problem.ts'

/** Each holds a connection of the database as long as it lasts; imports need some too. */
const MOST = 4
const MOST_EACH = 2

/** Exports that are under way, by organization: nobody's readers keep another's from theirs. */
export function exportsUnderWay(): (
  organization: string,
  begin: () => Promise<Readable>,
) => Promise<Readable> {
  const running = new Map<string, number>()
  let all = 0
  return async (organization, begin) => {
    const own = running.get(organization) ?? 0
    if (own >= MOST_EACH) {
      throw problem('too-many-requests', {
        detail: `Your organization has ${own} exports under way, the most it may have at once. Finish or cancel one, then try again.`,
        headers: { 'retry-after': '30' },
      })
    }
    if (all >= MOST) {
      throw problem('overloaded', {
        detail: `${all} exports are under way, the most the service allows at once. Try again when one has finished.`,
        headers: { 'retry-after': '30' },
      })
    }
    running.set(organization, own + 1)
    all += 1
    let over = false
    const end = (): void => {
      if (over) return
      over = true
      all -= 1
      const left = (running.get(organization) ?? 1) - 1
      if (left === 0) running.delete(organization)
      else running.set(organization, left)
    }
    try {
      // Read to the end, or broken off: whichever is known first.
      return (await begin()).once('end', end).once('close', end)
    } catch (fault) {
      end()
      throw fault
    }
  }
}
