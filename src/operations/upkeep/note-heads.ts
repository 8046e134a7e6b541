import type { KeyObject } from 'node:crypto'
import { appendFile, readFile } from 'node:fs/promises'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { postTo } from '../../net/post-to.ts'
import { INTERNET, type Outside } from '../../net/target.ts'
import { currentHeads, notAsNoted, noteNoting } from '../../store/audit/current-heads.ts'
import { type Head, notedHeads } from '../../store/audit/head.ts'
import { sealHeads } from '../../store/audit/seal-heads.ts'
import { administer } from '../../store/database/transact.ts'
import type { OperationContext } from '../context.ts'
import { type Repeating, repeating } from './repeating.ts'

/** Where the ends of the audit chains are kept beside the database: whoever has the one should not have the other. */
export type NotedWhere = {
  /** A line is added each time. */
  readonly file: string | undefined
  /** It is sent there each time, as JSON. */
  readonly url: string | undefined
  readonly key: KeyObject | undefined
  readonly outside?: Outside
}

type Context = Pick<OperationContext, 'database' | 'clock'>

/**
 * Notes where the chains end, after it has looked whether they still hold what was noted before. Returns what they do not,
 * in words: that is noted no further, for a note is not to make a cut good.
 */
export async function noteHeads(context: Context, where: NotedWhere): Promise<readonly string[]> {
  const at = context.clock()
  const before = await lastNoted(where.file)
  const { heads, faults } = await administer(context.database, async (tx) => {
    const found = await notAsNoted(tx, before)
    await noteNoting(tx, found.length, at)
    return { heads: await currentHeads(tx), faults: found }
  })
  if (faults.length > 0) return faults
  const noted = await sealHeads({ at: at.toISOString(), heads: [...heads] }, where.key)
  const line = `${JSON.stringify(JSON.parse(noted))}\n`
  if (where.file !== undefined) await appendFile(where.file, line, { mode: 0o600, flush: true })
  if (where.url !== undefined) {
    const sent = await postTo(
      where.url,
      { headers: { 'content-type': 'application/json' }, body: line },
      where.outside ?? INTERNET,
    )
    if (!sent.ok) throw new OutsideFailure(`the ends of the audit chains were not taken: ${sent.error}`)
    if (sent.value.status >= 300)
      throw new OutsideFailure(
        `the ends of the audit chains were not taken: it answered ${sent.value.status}`,
      )
  }
  return []
}

/** The last line of the file; none where there is no file yet. A line that was cut by a full disk is skipped. */
async function lastNoted(file: string | undefined): Promise<readonly Head[]> {
  if (file === undefined) return []
  const text = await readFile(file, 'utf8').catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'ENOENT') return ''
    throw fault
  })
  for (const line of text.trimEnd().split('\n').reverse()) {
    try {
      const { signature: _, ...rest } = JSON.parse(line) as { readonly signature?: string }
      const read = notedHeads.safeParse(rest)
      if (read.success) return read.data.heads
    } catch {
      // The line before it is whole.
    }
  }
  return []
}

const HOUR_MS = 3_600_000

export const keepNoting = (
  context: Context,
  where: NotedWhere,
  options: Pick<Repeating, 'onTrouble'>,
): (() => Promise<void>) | undefined =>
  where.file === undefined && where.url === undefined
    ? undefined
    : repeating(
        async () => {
          for (const fault of await noteHeads(context, where))
            options.onTrouble(new Error(`the audit was cut or written anew: ${fault}`))
        },
        { firstMs: 30_000, everyMs: HOUR_MS, failing: 'the audit is not noted outside', ...options },
      )
