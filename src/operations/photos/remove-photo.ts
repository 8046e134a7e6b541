import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { lockFindings } from '../../store/findings.ts'
import { deletePhoto, photoById } from '../../store/photos.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'

/** Takes a photo away from a draft: one of the wrong thing, or with somebody in it. What was submitted keeps its own. */
export const removePhoto = (
  { database }: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<null>> =>
  transact(database, actor, async (tx) => {
    const photo = await photoById(tx, actor.county, id)
    if (!photo) return notFound()
    const findings = await lockFindings(tx, actor.county, photo.findings)
    if (findings?.state !== 'draft') return conflict('Its findings are submitted and keep their photos.')
    await deletePhoto(tx, actor.county, id)
    return ok(null)
  })
