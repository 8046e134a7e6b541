import { OutsideFailure } from '../../base/outside-failure.ts'
import { ok } from '../../base/result.ts'
import { countyById } from '../../store/counties.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Import, type ImportKind, importById, insertImport, savedMapping } from '../../store/imports.ts'
import type { OperationContext } from '../context.ts'
import { mayUse } from '../quotas.ts'
import { type Answer, invalid, notFound } from '../refusal.ts'
import { mappingFaults } from './check-mapping.ts'
import { headingsKey, proposeMapping } from './propose-mapping.ts'
import { readHead } from './read-head.ts'

export type FileTaken = {
  readonly kind: ImportKind
  readonly format: 'csv' | 'ndjson'
  /** Of its bytes, which are in the originals already. */
  readonly hash: string
  readonly bytes: number
  readonly fileName: string | null
}

/** Takes a file of many records in and says what its columns seem to mean; nothing of it is imported yet. */
export async function takeInFile(
  context: OperationContext,
  actor: Person,
  file: FileTaken,
): Promise<Answer<Import>> {
  const head = await readHead(async () => {
    const bytes = await context.files.read(file.hash)
    if (!bytes) throw new OutsideFailure('The uploaded file is missing from storage')
    return bytes
  }, file.format)
  if (typeof head === 'string') return invalid({ pointer: '/file', message: head })
  return transact(context.database, actor, async (tx) => {
    const { county: countyId, account: madeBy } = actor
    const county = await countyById(tx, countyId)
    if (!county) return notFound()
    const saved = await savedMapping(tx, countyId, file.kind, headingsKey(head.headings))
    const may = await mayUse(tx, context, 'imports', file.bytes)
    if (!may.ok) return may
    const id = context.newId()
    await insertImport(tx, countyId, {
      id,
      kind: file.kind,
      format: file.format,
      contentHash: file.hash,
      bytes: file.bytes,
      fileName: file.fileName,
      head,
      mapping:
        saved && mappingFaults(file.kind, head, saved).length === 0
          ? saved
          : proposeMapping(file.kind, head, county.parcelFormat),
      madeBy,
      madeAt: context.clock(),
    })
    return ok((await importById(tx, countyId, id))!)
  })
}
