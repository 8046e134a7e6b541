import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import {
  changeImport,
  type Import,
  importById,
  lockImport,
  type Mapping,
  saveMapping,
} from '../../store/imports.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { mappingFaults } from './check-mapping.ts'
import { headingsKey } from './propose-mapping.ts'

/** Says what the columns mean. Kept for the next file with the same headings. */
export const changeMapping = (
  { database, clock }: Pick<OperationContext, 'database' | 'clock'>,
  actor: Person,
  asked: { readonly id: string; readonly version: number | undefined; readonly mapping: Mapping },
): Promise<Answer<Import>> =>
  transact(database, actor, async (tx) => {
    const { county, account: by } = actor
    const { id, version, mapping } = asked
    const it = await lockImport(tx, county, id)
    if (!it) return notFound()
    if (version !== undefined && version !== it.revision) return stale()
    if (it.state === 'running' || it.state === 'trying') return conflict('This import is under way.')
    if (it.state === 'done') return conflict('This import is done.')
    if (it.readToLine > 0)
      return conflict(
        'Rows of this file were imported with another mapping. Send the rest as a separate file.',
      )
    const faults = mappingFaults(it.kind, it.head, mapping)
    if (faults.length > 0) return invalid(...faults)
    await saveMapping(
      tx,
      county,
      { kind: it.kind, headings: headingsKey(it.head.headings), mapping },
      { by, at: clock() },
    )
    await changeImport(tx, county, id, { mapping, state: 'waiting' })
    return ok((await importById(tx, county, id))!)
  })
