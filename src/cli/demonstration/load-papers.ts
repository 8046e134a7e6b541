import { createReadStream } from 'node:fs'
import type { OperationContext } from '../../operations/context.ts'
import { takeInDocument } from '../../operations/documents/take-in-document.ts'
import { serviceIn } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Cast, COUNTY, holdDemonstration } from './enrol.ts'

/** Documents with text of their own, and the parcel of each. */
export const PAPERS: readonly { readonly file: string; readonly parcel: string }[] = [
  { file: 'card-of-1966.pdf', parcel: '07-0476-0012' },
  { file: 'letter-of-1981.pdf', parcel: '07-0476-0001' },
  { file: 'form-of-1988.pdf', parcel: '07-0486-0011' },
  { file: 'two-permits-of-one-parcel.pdf', parcel: '07-0486-0004' },
]

/**
 * Hands the papers in, as a reviewer does; they are read in the background and wait to be confirmed. One that was taken
 * in before is left as it is. Returns how many were new.
 */
export const loadPapers = (context: OperationContext, { reviewer }: Cast): Promise<number> =>
  transact(context.database, serviceIn(COUNTY.id), async (tx, within) => {
    await holdDemonstration(tx)
    let taken = 0
    for (const { file, parcel } of PAPERS) {
      const kept = await context.files.keep(createReadStream(new URL(`papers/${file}`, import.meta.url)))
      const paper = { kept, mediaType: 'application/pdf', fileName: file, parcel }
      const answer = await takeInDocument({ ...context, database: within }, reviewer, paper)
      if (answer.ok) taken += 1
      else if (answer.error.why !== 'conflict') throw new Error(`${file}: ${JSON.stringify(answer.error)}`)
    }
    return taken
  })
