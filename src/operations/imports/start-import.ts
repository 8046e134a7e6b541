import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { forgetRejections } from '../../store/import-rejections.ts'
import { changeImport, type Import, importById, lockImport } from '../../store/imports.ts'
import { jobById } from '../../store/jobs.ts'
import { insertRerun } from '../../store/reruns.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid, notFound } from '../refusal.ts'
import { mappingFaults } from './check-mapping.ts'

/** Tries an import (everything is undone again) or runs it; one that failed goes on where it was. */
export const startImport = (
  context: OperationContext,
  actor: Person,
  id: string,
  trial: boolean,
): Promise<Answer<Import>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account: by } = actor
    const it = await lockImport(tx, county, id)
    if (!it) return notFound()
    const lost = it.job !== null && (await jobById(tx, county, it.job))?.state === 'failed'
    if ((it.state === 'running' || it.state === 'trying') && !lost)
      return conflict('This import is under way.')
    if (it.state === 'done') return conflict('This import is done. Send the file again to import it again.')
    const faults = mappingFaults(it.kind, it.head, it.mapping)
    if (faults.length > 0)
      return invalid(...faults.map((fault) => ({ ...fault, pointer: `/mapping${fault.pointer}` })))
    const goesOn = it.readToLine > 0 && !trial
    if (!goesOn) await forgetRejections(tx, county, id)
    const rerun = trial || it.kind === 'parcels' ? it.rerun : (it.rerun ?? context.newId())
    if (rerun !== null && it.rerun === null) {
      await insertRerun(tx, county, {
        id: rerun,
        cause: 'imported',
        state: 'gathering',
        askedAt: context.clock(),
        by,
      })
    }
    const job = await context.jobs.enqueue(tx, actor, 'run-import', { import: id })
    await changeImport(tx, county, id, {
      state: trial ? 'trying' : 'running',
      reason: null,
      job,
      rerun,
      ...(goesOn ? {} : { rowsRead: 0, readToLine: 0, added: 0, changed: 0, unchanged: 0, rejected: 0 }),
    })
    return ok((await importById(tx, county, id))!)
  })
