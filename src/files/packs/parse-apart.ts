import path from 'node:path'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { err, ok, type Result } from '../../base/result.ts'
import { takingTurns } from '../../base/turns.ts'
import { type RuleBook, ruleBook } from '../../rules/book.ts'
import type { Pack } from '../../rules/pack.ts'
import type { Fault } from '../../rules/parse/fault.ts'
import type { PackText } from '../../rules/parse/parse-packs.ts'
import { PROGRAM, runBounded } from '../../scan/bounded-child.ts'

type Said = { readonly pack?: Pack; readonly faults?: readonly Fault[]; readonly done?: true }

const SCRIPT = path.join(import.meta.dirname, 'child/parse.ts')
const LIMIT_MS = 20_000
const MEMORY_BYTES = 512 * 1_048_576

const inTurn = takingTurns({ what: 'rules to be read', atOnce: 1, each: 1, mostWaiting: 20 })

/**
 * Packs that somebody wrote, read in a process of its own with limits: YAML of a few hundred kilobytes can be made to
 * take seconds. `blamed`: the file that a reading without end is laid to. In turns by `who` sends it.
 */
export async function parsePacksApart(
  texts: readonly PackText[],
  blamed: string,
  who: string,
): Promise<Result<RuleBook, readonly Fault[]>> {
  const packs: Pack[] = []
  let faults: readonly Fault[] | undefined
  let done = false
  const ending = await inTurn(who, () =>
    runBounded({
      script: SCRIPT,
      args: [],
      mayRead: PROGRAM,
      memoryBytes: MEMORY_BYTES,
      firstMs: LIMIT_MS,
      signal: undefined,
      input: () => [JSON.stringify(texts)],
      onMessage: (message) => {
        const said = message as Said
        if (said.pack) packs.push(said.pack)
        faults ??= said.faults
        done ||= said.done === true
      },
    }),
  )
  if (faults) return err(faults)
  if (done) return ok(ruleBook(packs))
  if (ending.how === 'timed-out' || ending.how === 'out-of-memory')
    return err([
      { file: blamed, line: 1, col: 1, message: 'takes more time or memory to read than is allowed' },
    ])
  const detail = ending.how === 'finished' ? 'it said too little' : ending.detail
  throw new OutsideFailure(`the reading of rules ended: ${detail}`, { retryAfterSeconds: 10 })
}
